import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** What is put on paper. */
export type Sheet = 'roster' | 'plan';

/** Which sheet the printer gets: the one asked for, and both when the browser's own command prints. */
export function usePrinting() {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  useEffect(() => {
    // The paper's own side follows it; see print-plan.module.css.
    if (sheet === null) delete document.documentElement.dataset.sheet;
    else document.documentElement.dataset.sheet = sheet;
    return () => {
      delete document.documentElement.dataset.sheet;
    };
  }, [sheet]);
  useEffect(() => {
    const done = () => setSheet(null);
    window.addEventListener('afterprint', done);
    return () => window.removeEventListener('afterprint', done);
  }, []);
  const print = (wanted: Sheet) => {
    // The page must hold the sheet before the printer looks at it.
    flushSync(() => setSheet(wanted));
    window.print();
  };
  return { sheet, print };
}
