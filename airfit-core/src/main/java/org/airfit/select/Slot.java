package org.airfit.select;

/** A part's place in the run, as far as a rule asks. */
enum Slot {
  OUTLET_SOCKET,
  HOSE_PLUG,
  HOSE,
  TOOL_SOCKET,
  TOOL_PLUG,
  ADAPTER;

  boolean isSocket() {
    return this == OUTLET_SOCKET || this == TOOL_SOCKET;
  }

  boolean isCoupling() {
    return this != HOSE && this != ADAPTER;
  }
}
