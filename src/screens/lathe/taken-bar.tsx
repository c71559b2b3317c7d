import './taken-bar.css';

type TakenBarProps = {
  /** How much of the way from the blank to the target is taken, 0 to 1. */
  readonly share: number;
  /** So much more is cut and not measured. */
  readonly unmeasured: number;
  /** The size it started from. */
  readonly from: string;
  readonly limits: string;
  readonly spoken: string;
};

// The limits stand here, near the end.
const TARGET_PERCENT = 96;

/** From the blank to the target as a scribed line: metal taken filled, cut but not measured hatched, the limits in brass. */
export function TakenBar({ share, unmeasured, from, limits, spoken }: TakenBarProps) {
  const at = (part: number) => `${Math.max(0, Math.min(1, part)) * TARGET_PERCENT}%`;
  return (
    <div class="taken-bar">
      <svg class="taken-bar-drawing" role="img" aria-label={spoken}>
        <pattern id="taken-bar-hatch" width="9" height="9" patternUnits="userSpaceOnUse">
          <path d="M-1 10L10 -1" stroke="currentColor" stroke-width="2.4" />
        </pattern>
        <rect class="taken-bar-taken" x="0" y="7" width={at(share)} height="22" />
        <rect
          x={at(share)}
          y="7"
          width={at(Math.min(unmeasured, 1 - share))}
          height="22"
          fill="url(#taken-bar-hatch)"
        />
        <rect class="taken-bar-frame" x="0" y="7" width={`${TARGET_PERCENT}%`} height="22" />
        <line class="taken-bar-target" x1={`${TARGET_PERCENT}%`} x2={`${TARGET_PERCENT}%`} y1="0" y2="36" />
      </svg>
      <p class="taken-bar-ends" aria-hidden="true">
        <span>{from}</span>
        <span class="taken-bar-limits">{limits}</span>
      </p>
    </div>
  );
}
