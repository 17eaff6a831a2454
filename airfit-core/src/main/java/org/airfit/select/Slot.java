package org.airfit.select;

/** Where in the run a part sits, as far as a rule asks. */
enum Slot {
  WALL_SOCKET,
  HOSE_PLUG,
  HOSE,
  TOOL_SOCKET,
  TOOL_PLUG,
  ADAPTER;

  boolean isSocket() {
    return this == WALL_SOCKET || this == TOOL_SOCKET;
  }

  boolean isCoupling() {
    return this != HOSE && this != ADAPTER;
  }
}
