/** Degrees as radians, floating point. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Radians as degrees, floating point. */
export function degreesOf(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** An angle as a slide or a protractor is set: `1° 26′ 16″`; rounded to the second. */
export function sayAngle(degrees: number): string {
  const seconds = Math.round(degrees * 3600);
  const [whole, rest] = [Math.floor(seconds / 3600), seconds % 3600];
  return `${whole}°\u00a0${Math.floor(rest / 60)}′\u00a0${rest % 60}″`;
}
