/**
 * Compressed-air connections: identify a plug or a thread, size the line, choose the parts, and show the working.
 *
 * <p>Start at {@code org.airfit.run} for a run from supply to tool, at {@code org.airfit.plug}, {@code
 * org.airfit.thread} and {@code org.airfit.joint} for what lies in the hand, and at {@code org.airfit.select} for a
 * parts list.
 */
module org.airfit.core {
  requires static org.jspecify;

  exports org.airfit.air;
  exports org.airfit.drawing;
  exports org.airfit.flow;
  exports org.airfit.joint;
  exports org.airfit.line;
  exports org.airfit.measure;
  exports org.airfit.network;
  exports org.airfit.plant;
  exports org.airfit.plug;
  exports org.airfit.quantity;
  exports org.airfit.run;
  exports org.airfit.safety;
  exports org.airfit.select;
  exports org.airfit.source;
  exports org.airfit.thread;
  exports org.airfit.working;
}
