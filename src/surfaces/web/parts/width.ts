// The width a drawing gets, watched, so that it is laid out for it and never scaled.
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { RefObject } from "preact";

export function useWidth<E extends HTMLElement>(): readonly [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const measure = (): void => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
