package org.airfit.run;

/** What can be other than told in a run. */
public enum SuspectKind {
  /** Nothing: all is as told. */
  NOTHING,
  /** A coupling, valve, filter or the like lets less air through than told; of an unmarked one, less or more. */
  PART,
  /** A pipe, tube or hose is narrower inside than told; of an unmarked one, narrower or wider. */
  BORE,
  /** A regulator, or the supply, holds less than told while air flows. */
  DROOP,
  /** Air escapes behind an element. */
  LEAK,
  /** The tool takes more or less air than told. */
  TOOL_AIR,
  /** A gauge is off by far more than its limit of error. */
  GAUGE,
  /** Something that is not in the list, or several things at once. */
  OTHER
}
