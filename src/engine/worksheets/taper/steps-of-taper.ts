import type { StepOffer } from '../worksheet.ts';

/** How a taper goes together: clean and dry, seated by hand, then drawn up. */
export function stepsOfTaper(): readonly StepOffer[] {
  return [
    { text: 'Wipe taper and socket clean and dry; stone off every burr', drawn: true },
    {
      text: 'Seat the taper by hand with a quarter turn and feel for rock',
      orientation: 'key or mark in line',
    },
    { text: 'Draw the taper up by its nut or bolt', torqueIn: 'Nm' },
  ];
}
