// How many pixels a millimetre has on this screen: measured with a thing of known size.

/** What is held to the screen: the long and the short side [mm]. */
export const THINGS = {
  // ISO/IEC 7810, card ID-1: 85.60 mm by 53.98 mm.
  card: { name: 'bank card', long: 85.6, short: 53.98 },
  rule: { name: 'steel rule', long: 100, short: 0 },
};

/** What a screen has if its maker keeps to CSS: 96 px to the inch. */
export const UNMEASURED = 96 / 25.4;

/** The pixels of a millimetre, where a length was made to match. */
export function scaleOf(px, mm) {
  const scale = px / mm;
  return scale >= 1.5 && scale <= 16 ? scale : UNMEASURED;
}
