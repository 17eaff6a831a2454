package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.ToldPair;
import org.airfit.safety.Medium;

/** Which plugs can meet sockets of another profile or medium, while some bays are changed and others are not. */
final class MixedShop {

  /** Halves of one kind that are there: how many, and where. */
  private static final class Pieces {
    private int count;
    private final Set<String> bays = new LinkedHashSet<>();

    private void add(int more, String bay) {
      count += more;
      bays.add(bay);
    }
  }

  /** What a line carries; nobody tells whether two lines of an unnamed medium carry the same one. */
  private record Carried(Medium medium, String unnamed) {
    static Carried in(Bay bay) {
      return new Carried(bay.medium(), bay.medium() == Medium.OTHER ? bay.name() : "");
    }
  }

  private record Plug(String profile, Carried carried) {}

  private record Socket(Set<String> takes, Carried carried) {}

  private final CouplingInventory inventory;

  MixedShop(CouplingInventory inventory) {
    this.inventory = inventory;
  }

  /**
   * The pairs that can be made. Any plug can be carried to any socket.
   *
   * @param changed the profile of each bay that is changed, by its name
   */
  List<MixedPair> pairs(Map<String, String> changed) {
    Map<Plug, Pieces> plugs = new LinkedHashMap<>();
    Map<Socket, Pieces> sockets = new LinkedHashMap<>();
    for (Bay bay : inventory.bays()) {
      String profile = changed.get(bay.name());
      for (Bay.Plugs row : bay.plugs()) {
        Plug plug = new Plug(profile == null ? row.profile() : profile, Carried.in(bay));
        plugs.computeIfAbsent(plug, any -> new Pieces()).add(row.count(), bay.name());
      }
      for (Bay.Sockets row : bay.sockets()) {
        Socket socket =
            new Socket(profile == null ? row.takes() : Set.of(profile), Carried.in(bay));
        sockets.computeIfAbsent(socket, any -> new Pieces()).add(row.count(), bay.name());
      }
    }
    List<MixedPair> pairs = new ArrayList<>();
    plugs.forEach((plug, some) -> sockets.forEach((socket, others) -> {
      boolean across = !plug.carried.equals(socket.carried);
      PairOutcome outcome = ToldPair.judge(inventory.pairs(), plug.profile, socket.takes);
      if (across || outcome != PairOutcome.FITS) {
        pairs.add(new MixedPair(
            plug.profile,
            socket.takes,
            outcome,
            across,
            some.count,
            others.count,
            List.copyOf(some.bays),
            List.copyOf(others.bays)));
      }
    }));
    pairs.sort((one, other) -> Integer.compare(one.rank(), other.rank()));
    return pairs;
  }
}
