import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** Whether the page is being printed: what is only told on demand on a screen is always told on paper. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const print = window.matchMedia('print');
    // The paper is drawn as soon as the listeners are through.
    const tell = () => flushSync(() => setPrinting(print.matches));
    print.addEventListener('change', tell);
    return () => print.removeEventListener('change', tell);
  }, []);
  return printing;
}
