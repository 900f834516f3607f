import '@testing-library/jest-dom/vitest';
import { cleanup } from '@testing-library/react';
import { afterEach } from 'vitest';

afterEach(cleanup);

// jsdom has no screen, so nothing matches a question about it.
if (typeof window !== 'undefined')
  window.matchMedia = (media) =>
    Object.assign(new EventTarget(), {
      media,
      matches: false,
      onchange: null,
      addListener: () => undefined,
      removeListener: () => undefined,
    });
