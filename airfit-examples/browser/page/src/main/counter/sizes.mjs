// The sizes of a plug, as files and people name them.

/** Each is also the name of a field of readings. */
export const SIZES = [
  'tip diameter',
  'collar diameter',
  'tip length',
  'insertion length',
  'groove width',
  'groove diameter',
  'tip to collar',
  'shoulder diameter',
  'bore',
];
