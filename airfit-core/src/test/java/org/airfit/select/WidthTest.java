package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which part leaves at least as much behind it as another, by what physics says of each of its figures. */
class WidthTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");
  private static final Source INVENTED = Source.derived("invented for the test");

  private static FlowCapacity capacity(double c, double b, double index, double cracking) {
    return FlowCapacity.of(new FlowCoefficients(
        SonicConductance.ofCubicDecimetresPerSecondBar(c), b, index, PressureDrop.ofBar(cracking)));
  }

  private static Conduit bore(double bore, double metres, double roughness, double k) {
    return Conduit.of(
            Length.ofMillimetres(bore), Length.ofMetres(metres), Length.ofMillimetres(roughness))
        .withFittings(k);
  }

  private static List<Part> lettingThrough(CapacityRange range) {
    return List.of(
        new Part.Socket(Shelf.steel("socket"), Set.of("finch"), FEMALE, range),
        new Part.Device(Shelf.steel("filter"), DeviceKind.FILTER, range, FEMALE, MALE),
        new Part.Splitter(Shelf.steel("splitter"), range, FEMALE, List.of(FEMALE, FEMALE)),
        regulator(range, 0.2, 10.0));
  }

  private static Part.Regulator regulator(CapacityRange range, double droop, double litres) {
    return new Part.Regulator(
        Shelf.steel("regulator"),
        range,
        PressureDrop.ofBar(droop),
        FreeAirFlow.ofAnrLitresPerSecond(litres),
        FEMALE,
        MALE);
  }

  private static Part.Hose hose(ConduitRange range) {
    return new Part.Hose(
        Shelf.steel("hose"), HoseBore.of(Length.ofMillimetres(10.0)), range, MALE, MALE);
  }

  /** C 4, b 0.3, index 0.5, opens at 0.1 bar: what is as wide has more C, more b, less to open, the same index. */
  @ParameterizedTest
  @CsvSource({
    "4.0, 0.30, 0.5, 0.10, true",
    "4.1, 0.30, 0.5, 0.10, true",
    "3.9, 0.30, 0.5, 0.10, false",
    "4.0, 0.31, 0.5, 0.10, true",
    "4.0, 0.29, 0.5, 0.10, false",
    "4.0, 0.30, 0.6, 0.10, false",
    "4.0, 0.30, 0.4, 0.10, false",
    "4.0, 0.30, 0.5, 0.09, true",
    "4.0, 0.30, 0.5, 0.11, false"
  })
  void what_lets_more_through_is_as_wide(
      double c, double b, double index, double cracking, boolean isAsWide) {
    FlowCapacity usual = capacity(4.0, 0.3, 0.5, 0.1);
    FlowCapacity other = capacity(c, b, index, cracking);
    List<Part> before = lettingThrough(CapacityRange.exactly(usual));
    List<Part> after = lettingThrough(CapacityRange.exactly(other));
    for (int i = 0; i < before.size(); i++) {
      assertThat(Width.isAsWide(after.get(i), before.get(i)))
          .as(after.get(i).toString())
          .isEqualTo(isAsWide);
    }
  }

  /** Of what is known as a range both ends count: as wide at best only is not as wide. */
  @Test
  void both_ends_of_a_range_count() {
    FlowCapacity small = capacity(2.0, 0.3, 0.5, 0.0);
    FlowCapacity middle = capacity(4.0, 0.3, 0.5, 0.0);
    FlowCapacity large = capacity(8.0, 0.3, 0.5, 0.0);
    List<Part> exact = lettingThrough(CapacityRange.exactly(middle));
    List<Part> below = lettingThrough(new CapacityRange(small, middle, INVENTED));
    List<Part> above = lettingThrough(new CapacityRange(middle, large, INVENTED));
    for (int i = 0; i < exact.size(); i++) {
      assertThat(Width.isAsWide(exact.get(i), below.get(i))).isTrue();
      assertThat(Width.isAsWide(below.get(i), exact.get(i))).isFalse();
      assertThat(Width.isAsWide(above.get(i), exact.get(i))).isTrue();
      assertThat(Width.isAsWide(exact.get(i), above.get(i))).isFalse();
    }
    Part.Hose known = hose(ConduitRange.exactly(bore(10.0, 10.0, 0.01, 1.0)));
    Part.Hose narrower =
        hose(new ConduitRange(bore(9.0, 10.0, 0.01, 1.0), bore(10.0, 10.0, 0.01, 1.0), INVENTED));
    Part.Hose wider =
        hose(new ConduitRange(bore(10.0, 10.0, 0.01, 1.0), bore(11.0, 10.0, 0.01, 1.0), INVENTED));
    assertThat(Width.isAsWide(known, narrower)).isTrue();
    assertThat(Width.isAsWide(narrower, known)).isFalse();
    assertThat(Width.isAsWide(wider, known)).isTrue();
    assertThat(Width.isAsWide(known, wider)).isFalse();
  }

  /** 10 mm, 10 m, 0.01 mm, K 1: a wider bore, less length, roughness or loss of fittings leave more behind. */
  @ParameterizedTest
  @CsvSource({
    "10.0, 10.0, 0.010, 1.0, true",
    "10.1, 10.0, 0.010, 1.0, true",
    "9.9, 10.0, 0.010, 1.0, false",
    "10.0, 9.9, 0.010, 1.0, true",
    "10.0, 10.1, 0.010, 1.0, false",
    "10.0, 10.0, 0.009, 1.0, true",
    "10.0, 10.0, 0.011, 1.0, false",
    "10.0, 10.0, 0.010, 0.9, true",
    "10.0, 10.0, 0.010, 1.1, false"
  })
  void a_bore_that_loses_less_is_as_wide(
      double mm, double metres, double roughness, double k, boolean isAsWide) {
    Conduit usual = bore(10.0, 10.0, 0.01, 1.0);
    Conduit other = bore(mm, metres, roughness, k);
    assertThat(Width.isAsWide(hose(ConduitRange.exactly(other)), hose(ConduitRange.exactly(usual))))
        .isEqualTo(isAsWide);
    assertThat(Width.isAsWide(
            new Part.Adapter(Shelf.steel("one"), MALE, FEMALE, other),
            new Part.Adapter(Shelf.steel("other"), MALE, FEMALE, usual)))
        .isEqualTo(isAsWide);
  }

  /** 0.2 bar at 10 L/s are as much per flow as 0.4 bar at 20 L/s. */
  @ParameterizedTest
  @CsvSource({"0.2, 10.0, true", "0.4, 20.0, true", "0.3, 20.0, true", "0.21, 10.0, false"})
  void a_regulator_that_droops_less_is_as_wide(double bar, double litres, boolean isAsWide) {
    CapacityRange range = CapacityRange.exactly(capacity(4.0, 0.3, 0.5, 0.0));
    assertThat(Width.isAsWide(regulator(range, bar, litres), regulator(range, 0.2, 10.0)))
        .isEqualTo(isAsWide);
  }

  /** Plugs let through what their sockets do; parts of two kinds are not weighed against each other. */
  @Test
  void plugs_are_all_as_wide_and_kinds_are_not_mixed() {
    Part plug = Shelf.plug(Shelf.steel("plug"), "finch", "1/4 NPT male");
    List<Part> through = lettingThrough(CapacityRange.exactly(capacity(4.0, 0.3, 0.5, 0.0)));
    assertThat(Width.isAsWide(plug, Shelf.plug(Shelf.steel("other"), "tern", "1/4 NPT male")))
        .isTrue();
    for (Part part : through) {
      assertThat(Width.isAsWide(part, part)).isTrue();
      assertThat(Width.isAsWide(plug, part)).isFalse();
      assertThat(Width.isAsWide(part, plug)).isFalse();
      for (Part other : through) {
        assertThat(Width.isAsWide(part, other)).isEqualTo(part == other);
      }
    }
  }
}
