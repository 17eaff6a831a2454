package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Later;
import org.jspecify.annotations.Nullable;

/**
 * All that may be other than told in a run, with what each lets stand at its places; worked out once, whatever is read.
 *
 * <p>Before anything is read, all as told has a chance of a quarter, a wrong gauge of a tenth, something else of a
 * twentieth, and the suspects share the rest evenly; what is not suspected has a tenth of the chance of a suspect: our
 * choice.
 */
final class GaugeModel {

  private static final double NOTHING = 0.25;
  private static final double GAUGES = 0.1;
  private static final double OTHER = 0.05;
  private static final double NOT_SUSPECTED = 0.1;

  private record Grid(Suspect suspect, GaugeGrid rows, int unknowns, double share) {}

  private final GaugeScene scene;
  private final List<String> names;
  private final Suspect base;
  private final GaugeGrid told;
  private final int unmarked;
  private final Later<List<Grid>> grids;

  /**
   * Makes the model.
   *
   * @param scene the run as told
   * @param possible what may be other than told, none of it an unmarked element
   * @param suspects what of it is suspected
   * @param unmarked the suspect of the element whose marking is a guess; null where there is none
   * @param tolerances how well the rest is known
   */
  GaugeModel(
      GaugeScene scene,
      List<Suspect> possible,
      List<Suspect> suspects,
      @Nullable Suspect unmarked,
      GaugeTolerances tolerances) {
    this.scene = scene;
    this.names = names(scene);
    this.unmarked = unmarked == null ? 0 : 1;
    this.base = unmarked == null ? new Suspect(SuspectKind.NOTHING, Suspect.RUN) : unmarked;
    List<GaugeUnknown> always = unmarked == null
        ? List.of()
        : List.of(GaugeUnknown.of(unmarked, scene, place(unmarked), true));
    this.told = GaugeGrid.of(scene, always, tolerances, null);
    this.grids = Later.of(() -> {
      List<Grid> all = new ArrayList<>();
      for (Suspect suspect : possible) {
        List<GaugeUnknown> unknowns = new ArrayList<>(always);
        unknowns.add(GaugeUnknown.of(suspect, scene, place(suspect), false));
        all.add(new Grid(
            suspect,
            GaugeGrid.of(scene, unknowns, tolerances, told),
            unknowns.size(),
            suspects.contains(suspect) ? 1.0 : NOT_SUSPECTED));
      }
      return List.copyOf(all);
    });
  }

  private static List<String> names(GaugeScene scene) {
    List<String> names = new ArrayList<>();
    names.add(GaugeReading.SUPPLY);
    scene.path().elements().forEach(element -> names.add(element.name()));
    return List.copyOf(names);
  }

  private int place(Suspect suspect) {
    return suspect.kind() == SuspectKind.TOOL_AIR ? 0 : names.indexOf(suspect.place());
  }

  GaugeScene scene() {
    return scene;
  }

  /** The places, by the supply and the elements behind which they are. */
  List<String> names() {
    return names;
  }

  /** The suspect of the element whose marking is a guess. */
  Optional<Suspect> unmarked() {
    return unmarked == 0 ? Optional.empty() : Optional.of(base);
  }

  /** Whether the tool gets its air where all is as told, or of an unmarked element anywhere near. */
  boolean isFed() {
    boolean[] any = {false};
    told.visit((x, row) -> any[0] = true);
    return any[0];
  }

  double priorOfOther() {
    return OTHER;
  }

  double gaugePressureOfSupply() {
    return scene.path().still().pressure().pascals() - scene.path().atmosphere().pascals();
  }

  /** All as told but for what is unmarked, not held against anything yet. */
  GaugeFit plain() {
    return new GaugeFit(base, told, NOTHING, unmarked);
  }

  /** All explanations of a list but something else, not held against anything yet. */
  List<GaugeFit> fits(List<String> gauges) {
    List<GaugeFit> all = new ArrayList<>();
    all.add(plain());
    List<Grid> possible = grids.get();
    double shares = possible.stream().mapToDouble(Grid::share).sum();
    for (Grid grid : possible) {
      double prior = (1.0 - NOTHING - GAUGES - OTHER) * grid.share / shares;
      all.add(new GaugeFit(grid.suspect, grid.rows, prior, grid.unknowns));
    }
    for (String gauge : gauges) {
      all.add(new GaugeFit(
          new Suspect(SuspectKind.GAUGE, gauge), told, GAUGES / gauges.size(), unmarked + 1));
    }
    return all;
  }

  /** The run with the value that an explanation has; empty where it has none, or it is no change of the run. */
  Optional<GaugeScene> at(Explanation explanation) {
    Suspect suspect = explanation.suspect();
    Optional<Double> x = switch (suspect.kind()) {
      case PART -> Optional.of(Math.log(explanation.factor().orElseThrow()));
      case BORE ->
        explanation.bore().map(bore -> Math.log(bore.best().metres() / toldBore(suspect)));
      case DROOP -> explanation.droop().map(droop -> droop.best().pascals());
      case TOOL_AIR ->
        explanation
            .air()
            .map(air -> Math.log(air.best().massFlow().kilogramsPerSecond()
                / (scene.tool().load() * scene.tool().rated().massFlow().kilogramsPerSecond())));
      case NOTHING -> Optional.of(0.0);
      case LEAK, GAUGE, OTHER -> Optional.empty();
    };
    return x.map(value -> suspect.kind() == SuspectKind.NOTHING
        ? scene
        : GaugeUnknown.of(suspect, scene, place(suspect), false).in(scene, value));
  }

  private double toldBore(Suspect suspect) {
    Element element = scene.path().elements().get(place(suspect) - 1).alone();
    return ((Element.Line) element).conduit().bore().metres();
  }
}
