import { describe, expect, it } from 'vitest';
import { fitted, plainPhoto } from './letter-photo';

describe('A photograph of a letter', () => {
  it('is made smaller along its longer side, in its own proportions', () => {
    expect(fitted(6000, 4000, 3000)).toEqual({ width: 3000, height: 2000 });
    expect(fitted(1000, 4000, 2000)).toEqual({ width: 500, height: 2000 });
  });

  it('is never made larger', () => {
    expect(fitted(800, 600, 3000)).toEqual({ width: 800, height: 600 });
  });

  it('goes as it is when it is no JPEG, or cannot be opened here', async () => {
    const pdf = new File(['%PDF-'], 'letter.pdf', { type: 'application/pdf' });
    const broken = new File(['no picture'], 'letter.jpg', { type: 'image/jpeg' });
    expect(await plainPhoto(pdf)).toBe(pdf);
    expect(await plainPhoto(broken)).toBe(broken);
  });
});
