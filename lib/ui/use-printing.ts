import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Whether the page is being printed, known before the browser lays the paper out. */
export function useIsPrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    const paper = window.matchMedia('print');
    const set = (value: boolean) => flushSync(() => setPrinting(value));
    const begin = () => set(true);
    const end = () => set(false);
    const follow = () => set(paper.matches);
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    paper.addEventListener('change', follow);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
      paper.removeEventListener('change', follow);
    };
  }, []);
  return isPrinting;
}
