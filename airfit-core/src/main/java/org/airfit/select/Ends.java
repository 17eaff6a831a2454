package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import org.airfit.joint.End;

/** How a part is joined on either side. */
final class Ends {

  private Ends() {}

  /** Whether both are pipe threads, and of two standards: one cut at 60°, the other at 55°. */
  static boolean areOfTwoStandards(End one, End other) {
    return one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && a.family().form() != b.family().form();
  }

  /** The end towards the supply; of a plug its only one. */
  static End upstream(Part part) {
    if (part instanceof Part.Socket socket) {
      return socket.end();
    }
    if (part instanceof Part.Plug plug) {
      return plug.end();
    }
    if (part instanceof Part.Device device) {
      return device.upstream();
    }
    if (part instanceof Part.Regulator regulator) {
      return regulator.upstream();
    }
    if (part instanceof Part.Splitter splitter) {
      return splitter.upstream();
    }
    if (part instanceof Part.Pipe pipe) {
      return pipe.upstream();
    }
    return part instanceof Part.Hose hose ? hose.upstream() : ((Part.Adapter) part).one();
  }

  /** The end towards the tool; of a socket its only one, of a splitter the outlet that its position tells. */
  static End downstream(Position position, Part part) {
    return part instanceof Part.Splitter splitter
        ? splitter.outlets().get(position.outlet())
        : downstream(part);
  }

  private static End downstream(Part part) {
    if (part instanceof Part.Adapter adapter) {
      return adapter.other();
    }
    if (part instanceof Part.Device device) {
      return device.downstream();
    }
    if (part instanceof Part.Regulator regulator) {
      return regulator.downstream();
    }
    if (part instanceof Part.Pipe pipe) {
      return pipe.downstream();
    }
    return part instanceof Part.Hose hose ? hose.downstream() : upstream(part);
  }

  /** Every end of a part, that towards the supply first. */
  static List<End> all(Part part) {
    if (part instanceof Part.Splitter splitter) {
      List<End> ends = new ArrayList<>(List.of(splitter.upstream()));
      ends.addAll(splitter.outlets());
      return ends;
    }
    return part instanceof Part.Socket || part instanceof Part.Plug
        ? List.of(upstream(part))
        : List.of(upstream(part), downstream(part));
  }
}
