import { useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import classes from './scroller.module.css';

/** Lets a table that is wider than its place be moved sideways, by the keys too; where it fits, Tab passes it by. */
export function Scroller({ children }: { readonly children: ReactNode }) {
  const ref = useRef<HTMLDivElement>(null);
  const [isWider, setIsWider] = useState(false);
  useLayoutEffect(() => {
    const place = ref.current;
    if (place === null) return undefined;
    const measure = () => setIsWider(place.scrollWidth > place.clientWidth);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(place);
    for (const table of place.children) observer.observe(table);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={ref} className={classes.scroller} {...(isWider && { tabIndex: 0 })}>
      {children}
    </div>
  );
}
