import { useLayoutEffect, useRef, useState } from 'react';

/** Units of a picture that are as long as the text of the page is high: pixels, where nobody has enlarged it. */
const TEXT_UNITS = 16;

/** Pixels of a unit in which pictures are drawn. */
const unitPx = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / TEXT_UNITS || 1;

/**
 * The width of an element for a picture in it, known before the first paint, so that the picture does not shift the
 * page. (The kit's own hook reports a frame later.) It is told in units that grow with the text of the page: words
 * twice as large have half as many of them to stand in, and lie over each other no more than at their usual size.
 */
export function useWidth<Target extends HTMLElement>() {
  const ref = useRef<Target>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const measure = () => setWidth(element.getBoundingClientRect().width / unitPx());
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}

/** The size of a picture of so many units: as wide as its place, as high as its text wants. */
export const pictureSize = (width: number, height: number) =>
  ({
    width: '100%',
    style: { height: `${height / TEXT_UNITS}rem` },
    viewBox: `0 0 ${width} ${height}`,
  }) as const;
