// @vitest-environment jsdom
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { useShortcut } from './shortcut';

const act = vi.fn();

function Page() {
  useShortcut('/', act);
  return <input aria-label="Notes" />;
}

describe('A single key', () => {
  beforeEach(() => {
    act.mockReset();
    localStorage.clear();
  });

  it('acts anywhere on the page', async () => {
    render(<Page />);
    await userEvent.keyboard('/');
    expect(act).toHaveBeenCalledOnce();
  });

  it('is left to the text being written', async () => {
    render(<Page />);
    await userEvent.type(screen.getByLabelText('Notes'), 'and/or');
    expect(act).not.toHaveBeenCalled();
    expect(screen.getByLabelText('Notes')).toHaveValue('and/or');
  });

  it('does nothing with Control held, or once single keys are switched off', async () => {
    localStorage.setItem('studio.single-keys', 'false');
    render(<Page />);
    await userEvent.keyboard('/');
    await userEvent.keyboard('{Control>}/{/Control}');
    expect(act).not.toHaveBeenCalled();
  });

  it('does nothing behind a dialog', async () => {
    render(
      <>
        <Page />
        <div role="dialog" aria-modal="true" aria-label="Sheet" />
      </>,
    );
    await userEvent.keyboard('/');
    expect(act).not.toHaveBeenCalled();
  });
});
