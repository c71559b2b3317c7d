import { useEffect, useRef } from 'preact/hooks';

/** For a chart whose answer stands above what is pressed for it: brings its top into view when another thing is asked. */
export function useAnswerInView(asked: string | undefined) {
  const chart = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked !== undefined) chart.current?.scrollIntoView({ block: 'start' });
  }, [asked]);
  return chart;
}
