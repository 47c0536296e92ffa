import { useLocation } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';

/** Moves the keyboard to the content when another page was opened, as the browser does on a page load. */
export function useFocusOnArrival() {
  const content = useRef<HTMLElement>(null);
  const pathname = useLocation({ select: (location) => location.pathname });
  const last = useRef(pathname);
  useEffect(() => {
    if (last.current === pathname) return;
    last.current = pathname;
    content.current?.focus({ preventScroll: true });
  }, [pathname]);
  return content;
}
