package org.airfit.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.UnmarkedFlow;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/** Reads the texts of {@link Rating}: what a {@link RatingRow} holds becomes a capacity, or a complaint. */
final class RatingReader {

  /** Longer than any rating a person types, tables too. */
  static final int LONGEST = 400;

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final Temperature SHOP = Temperature.ofCelsius(20.0);

  private static final Source GAUGE =
      Source.commonPractice("gauge pressures of the rating counted from 1.01325 bar(a)");
  private static final Source WARM = Source.commonPractice("air of the rating taken as 20 °C");

  private final RatingRow row;
  private final List<Source> assumed = new ArrayList<>();

  private RatingReader(RatingRow row) {
    this.row = row;
  }

  static RatingFigures read(String text) {
    if (text.length() > LONGEST) {
      throw new QuantityFormatException(
          text, LONGEST, "this text is longer than " + LONGEST + " characters", RatingRow.ACCEPTED);
    }
    refuseCommas(text);
    List<RatingRow> rows = rows(text);
    if (rows.isEmpty()) {
      throw new QuantityFormatException(text, 0, "the rating is missing", RatingRow.ACCEPTED);
    }
    return rows.size() == 1 ? new RatingReader(rows.get(0)).single() : table(rows);
  }

  private static void refuseCommas(String text) {
    for (int i = 1; i + 1 < text.length(); i++) {
      if (text.charAt(i) == ',' && isDigit(text.charAt(i - 1)) && isDigit(text.charAt(i + 1))) {
        throw new QuantityFormatException(
            text,
            i,
            "a comma means different things in different places: write 6.2 with a point and 1200 without a mark",
            RatingRow.ACCEPTED);
      }
    }
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static List<RatingRow> rows(String text) {
    List<RatingRow> rows = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || text.charAt(i) == ';' || text.charAt(i) == '\n') {
        if (!text.substring(from, i).isBlank()) {
          rows.add(new RatingRow(text, from, i));
        }
        from = i + 1;
      }
    }
    return rows;
  }

  private RatingFigures single() {
    if (row.coefficient != null) {
      requireNone(
          row.hasFlow()
              || row.conductance != null
              || row.area != null
              || row.b != null
              || row.m != null
              || row.opens != null,
          "a flow coefficient",
          "xT");
      return figures(RatingKind.COEFFICIENT, this::ofCoefficient);
    }
    if (row.xt != null) {
      throw row.wrong("xT belongs to a flow coefficient: give Cv or Kv");
    }
    if (row.conductance != null) {
      requireNone(
          row.hasFlow() || row.area != null, "a sonic conductance C", "b, m and \"opens at\"");
      return figures(RatingKind.CONDUCTANCE, this::ofConductance);
    }
    if (row.m != null || row.opens != null) {
      throw row.wrong("m and \"opens at\" belong to C and b of ISO 6358: give C");
    }
    if (row.area != null) {
      requireNone(row.hasFlow(), "an effective area S", "b");
      return figures(RatingKind.EFFECTIVE_AREA, this::ofArea);
    }
    if (!row.hasFlow()) {
      throw row.wrong("the flow, Cv, Kv, C or S is missing");
    }
    return ofFlow();
  }

  private void requireNone(boolean other, String kind, String beside) {
    boolean pressure = row.hasInlet()
        || row.drop != null
        || row.full
        || row.outlet != null
        || row.gaugeOutlet != null;
    if (other || pressure || row.temperature != null) {
      throw row.wrong("beside " + kind + " only " + beside + " may stand");
    }
  }

  private RatingFigures figures(RatingKind kind, Supplier<CapacityRange> capacity) {
    CapacityRange range;
    try {
      range = capacity.get();
    } catch (QuantityFormatException e) {
      throw e;
    } catch (IllegalArgumentException e) {
      QuantityFormatException wrong = row.wrong(String.valueOf(e.getMessage()));
      wrong.initCause(e);
      throw wrong;
    }
    return new RatingFigures(kind, range, assumed, OptionalDouble.empty());
  }

  private CapacityRange assuming(CapacityRange range) {
    if (!range.isExact()) {
      assumed.add(range.assumption());
    }
    return range;
  }

  private CapacityRange ofCoefficient() {
    return row.xt == null
        ? assuming(CapacityRange.ofValveCoefficient(Objects.requireNonNull(row.coefficient)))
        : CapacityRange.exactly(
            FlowCapacity.ofValveCoefficient(Objects.requireNonNull(row.coefficient), row.xt));
  }

  private CapacityRange ofConductance() {
    CapacityRange plain = row.b == null
        ? assuming(CapacityRange.ofConductance(Objects.requireNonNull(row.conductance)))
        : CapacityRange.exactly(FlowCapacity.of(Objects.requireNonNull(row.conductance), row.b));
    return new CapacityRange(asTold(plain.least()), asTold(plain.most()), plain.assumption());
  }

  private FlowCapacity asTold(FlowCapacity plain) {
    FlowCapacity indexed = row.m == null ? plain : plain.withSubsonicIndex(row.m);
    return row.opens == null ? indexed : indexed.withCrackingPressure(row.opens);
  }

  private CapacityRange ofArea() {
    Source relation =
        Source.derived("S is the section of a loss-free nozzle of the same choked flow");
    assumed.add(relation);
    return row.b == null
        ? assuming(CapacityRange.ofEffectiveArea(Objects.requireNonNull(row.area)))
        : CapacityRange.exactly(
            FlowCapacity.ofEffectiveArea(Objects.requireNonNull(row.area), row.b));
  }

  private RatingFigures ofFlow() {
    if (!row.hasInlet()) {
      return ofFlowWithoutInlet();
    }
    AbsolutePressure inlet = inlet();
    PressureDrop drop = drop(inlet);
    if (drop == null) {
      return figures(
          RatingKind.BARE_FLOW,
          () -> ofBareFlow((flow, warm) -> CapacityRange.ofRatedFlow(flow, inlet, warm)));
    }
    return figures(
        row.full ? RatingKind.FULL_FLOW : RatingKind.RATED_FLOW,
        () -> spanning(points(row, inlet, drop)));
  }

  private RatingFigures ofFlowWithoutInlet() {
    if (row.drop != null || row.outlet != null || row.gaugeOutlet != null) {
      throw row.wrong("a pressure drop without the pressure in front of the part: add it, such as"
          + " \"at 100 psig\"");
    }
    if (row.full) {
      throw row.wrong("a full flow without the pressure in front of the part: add it, such as"
          + " \"at 90 psig\"");
    }
    return figures(RatingKind.BARE_FLOW, () -> ofBareFlow(CapacityRange::ofRatedFlow));
  }

  private AbsolutePressure inlet() {
    if (row.inlet != null) {
      return row.inlet;
    }
    assume(GAUGE);
    return absolute(Objects.requireNonNull(row.gaugeInlet));
  }

  private AbsolutePressure absolute(GaugePressure gauge) {
    try {
      return gauge.absolute(ATMOSPHERE);
    } catch (IllegalArgumentException e) {
      QuantityFormatException wrong = row.wrong(String.valueOf(e.getMessage()));
      wrong.initCause(e);
      throw wrong;
    }
  }

  private void assume(Source source) {
    if (!assumed.contains(source)) {
      assumed.add(source);
    }
  }

  /** The drop of a row, or null where it tells none. */
  private @Nullable PressureDrop drop(AbsolutePressure inlet) {
    boolean hasOutlet = row.outlet != null || row.gaugeOutlet != null;
    if ((row.drop != null ? 1 : 0) + (hasOutlet ? 1 : 0) + (row.full ? 1 : 0) > 1) {
      throw row.wrong(
          "a pressure drop, a pressure behind the part and full flow: only one of them may stand");
    }
    if (row.full) {
      if (inlet.compareTo(ATMOSPHERE) <= 0) {
        throw row.wrong("full flow goes into the open, so the inlet must be above 1.01325 bar(a)");
      }
      assume(GAUGE);
      return inlet.dropTo(ATMOSPHERE);
    }
    if (hasOutlet) {
      if (row.outlet == null) {
        assume(GAUGE);
      }
      AbsolutePressure outlet =
          row.outlet != null ? row.outlet : absolute(Objects.requireNonNull(row.gaugeOutlet));
      if (outlet.compareTo(inlet) >= 0) {
        throw row.wrong("the pressure behind the part must be below that in front");
      }
      return inlet.dropTo(outlet);
    }
    if (row.drop != null) {
      requireSmaller(row.drop, inlet);
    }
    return row.drop;
  }

  private void requireSmaller(PressureDrop drop, AbsolutePressure inlet) {
    GaugePressure gauge = row.gaugeInlet;
    double most = gauge == null ? inlet.pascals() : gauge.pascals();
    if (!(drop.pascals() > 0.0)) {
      throw row.wrong("the pressure drop must be above 0");
    }
    if (!(drop.pascals() <= most && drop.pascals() < inlet.pascals())) {
      throw row.wrong("the pressure drop of " + drop.inFull(PressureUnit.PSI) + " ("
          + drop.format(PressureUnit.BAR) + ") must be "
          + (gauge == null
              ? "below the inlet of " + inlet.inFull(PressureUnit.PSI) + " ("
                  + inlet.format(PressureUnit.BAR)
              : "at most the inlet of " + gauge.inFull(PressureUnit.PSI) + " ("
                  + gauge.format(PressureUnit.BAR))
          + ")");
    }
  }

  private Temperature temperature() {
    if (row.temperature != null) {
      return row.temperature;
    }
    assume(WARM);
    return SHOP;
  }

  /** The points of a row: one for each end of what its flow may mean. */
  private List<RatedPoint> points(RatingRow of, AbsolutePressure inlet, PressureDrop drop) {
    if (of.unmarked != null) {
      assume(reading(of.unmarked));
    }
    Temperature temperature = temperature();
    return of.flows().stream()
        .map(flow -> new RatedPoint(flow, inlet, drop, temperature))
        .toList();
  }

  private static Source reading(UnmarkedFlow flow) {
    return Source.commonPractice("flow does not tell where the air is counted: read as "
        + flow.readings().stream()
            .map(UnmarkedFlow.Reading::name)
            .collect(Collectors.joining(" or ")));
  }

  private CapacityRange spanning(List<RatedPoint> points) {
    List<FlowCapacity> corners = new ArrayList<>();
    for (RatedPoint point : points) {
      if (row.b != null) {
        corners.add(point.capacity(row.b));
      } else {
        corners.add(point.capacity(CapacityRange.LEAST_B));
        corners.add(point.capacity(CapacityRange.MOST_B));
      }
    }
    if (row.b != null) {
      return CapacityRange.spanning(corners, CapacityRange.TOLD);
    }
    assume(CapacityRange.ANY_B);
    return CapacityRange.spanning(corners, CapacityRange.ANY_B);
  }

  private CapacityRange ofBareFlow(BiFunction<FreeAirFlow, Temperature, CapacityRange> rated) {
    if (row.unmarked != null) {
      assume(reading(row.unmarked));
    }
    Temperature temperature = temperature();
    List<FlowCapacity> ends = new ArrayList<>();
    for (FreeAirFlow flow : row.flows()) {
      CapacityRange one = rated.apply(flow, temperature);
      assume(one.assumption());
      ends.add(one.least());
      ends.add(one.most());
    }
    return CapacityRange.spanning(ends, CapacityRange.ANY_B);
  }

  private static RatingFigures table(List<RatingRow> rows) {
    RatingRow withInlet = rows.stream().filter(RatingRow::hasInlet).findFirst().orElse(rows.get(0));
    List<RatingRow> points = new ArrayList<>();
    for (RatingRow row : rows) {
      boolean isHeading = !row.hasFlow() && row.drop == null && row.hasInlet();
      if (!isHeading) {
        row.inheritInlet(withInlet);
        points.add(row);
      }
    }
    return points.size() == 1 ? new RatingReader(points.get(0)).single() : fit(points);
  }

  private static RatingFigures fit(List<RatingRow> rows) {
    List<List<RatedPoint>> all = new ArrayList<>();
    List<Source> assumed = new ArrayList<>();
    for (RatingRow row : rows) {
      RatingReader reader = new RatingReader(row);
      all.add(reader.point());
      reader.assumed.stream().filter(source -> !assumed.contains(source)).forEach(assumed::add);
    }
    requireRising(rows, all);
    List<PointsFit> fits = new ArrayList<>();
    for (int end = 0; end < 2; end++) {
      int which = end;
      fits.add(new PointsFit(
          all.stream()
              .map(points -> points.get(Math.min(which, points.size() - 1)))
              .toList(),
          CapacityRange.LEAST_B,
          CapacityRange.MOST_B));
    }
    List<FlowCapacity> corners = new ArrayList<>();
    fits.forEach(fit -> corners.addAll(fit.corners()));
    assumed.add(fits.get(0).source());
    return new RatingFigures(
        RatingKind.POINTS,
        CapacityRange.spanning(corners, fits.get(0).source()),
        assumed,
        OptionalDouble.of(fits.get(0).residual()));
  }

  private List<RatedPoint> point() {
    if (row.coefficient != null
        || row.conductance != null
        || row.area != null
        || row.b != null
        || row.m != null
        || row.xt != null
        || row.opens != null) {
      throw row.wrong("a table has points of a flow, an inlet pressure and a pressure drop only");
    }
    if (!row.hasFlow()) {
      throw row.wrong("the flow of this point is missing");
    }
    if (!row.hasInlet()) {
      throw row.wrong("a pressure drop without the pressure in front of the part: add it, such as"
          + " \"at 100 psig\"");
    }
    AbsolutePressure inlet = inlet();
    PressureDrop drop = drop(inlet);
    if (drop == null) {
      throw row.wrong("the pressure drop of this point is missing");
    }
    try {
      return points(row, inlet, drop);
    } catch (QuantityFormatException e) {
      throw e;
    } catch (IllegalArgumentException e) {
      QuantityFormatException wrong = row.wrong(String.valueOf(e.getMessage()));
      wrong.initCause(e);
      throw wrong;
    }
  }

  /** More flow from the same inlet loses more. */
  private static void requireRising(List<RatingRow> rows, List<List<RatedPoint>> all) {
    for (int i = 0; i < all.size(); i++) {
      for (int j = 0; j < all.size(); j++) {
        RatedPoint one = all.get(i).get(0);
        RatedPoint other = all.get(j).get(0);
        if (one.inlet().equals(other.inlet())
            && one.temperature().equals(other.temperature())
            && one.flow().compareTo(other.flow()) < 0
            && one.drop().compareTo(other.drop()) > 0) {
          throw rows.get(j)
              .wrong("from the same inlet this flow is larger than that of point " + (i + 1)
                  + " and loses less: look at both again");
        }
      }
    }
  }
}
