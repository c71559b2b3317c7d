import { useEffect, useState } from 'preact/hooks';
import { calendarDate } from './day-words.ts';

/** The day on the calendar, as text; the next one as soon as midnight is past and the screen is looked at. */
export function useToday(): string {
  const [today, setToday] = useState(dayNow);
  useEffect(() => {
    // One timer for a whole night wakes no phone; one that slept over it asks when it is taken up again.
    let timer = 0;
    const look = () => {
      clearTimeout(timer);
      timer = window.setTimeout(look, untilMidnight());
      setToday(dayNow());
    };
    look();
    document.addEventListener('visibilitychange', look);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, []);
  return today;
}

function dayNow(): string {
  return Object.values(calendarDate(Date.now())).join('-');
}

function untilMidnight(): number {
  const { year, month, day } = calendarDate(Date.now());
  return new Date(year, month - 1, day + 1).getTime() - Date.now();
}
