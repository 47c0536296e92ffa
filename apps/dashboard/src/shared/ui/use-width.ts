import { useLayoutEffect, useRef, useState } from 'react';

/**
 * The width of an element, px, known before the first paint, so that a picture drawn to it does not shift the
 * page. (The kit's own hook reports a frame later.)
 */
export function useWidth<Target extends HTMLElement>() {
  const ref = useRef<Target>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const measure = () => setWidth(element.getBoundingClientRect().width);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
