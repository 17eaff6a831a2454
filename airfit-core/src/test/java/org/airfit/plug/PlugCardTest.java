package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.CardTable;
import org.airfit.working.PencilCard;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PlugCardTest {

  private static final Source HERE = Source.demo("made up in this test");

  private static final Identifier BIRDS =
      Identifier.of(DemoProfiles.birds()).withWearAllowance(mm(0.0));

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugReading read(Dimension dimension, double size) {
    return PlugReading.of(dimension, Reading.of(mm(size), mm(0.02)));
  }

  private static List<String> row(PencilCard card, String profile) {
    return card.tables().get(0).rows().stream()
        .filter(row -> row.get(0).equals(profile))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Two readings: 1 − (1 − 2Q)² = 0.01 makes Q 0.002506, which tables of the normal distribution have at 2.806. The
   * scatter of the tip is √(0.03² + 0.02²) = 0.03606 mm, that of the groove √(0.06² + 0.02²) = 0.06325 mm: 0.101 and
   * 0.177 mm to either side of the nominal, 18.76 and 4.20 mm.
   */
  @Test
  void the_limits_are_those_worked_out_by_hand() {
    PencilCard card = BIRDS
        .identify(List.of(read(Dimension.TIP_DIAMETER, 18.80), read(Dimension.GROOVE_WIDTH, 4.25)))
        .pencilCard(UnitSystem.SI);
    CardTable table = card.tables().get(0);
    assertThat(table.heads())
        .containsExactly("profile", "tip diameter D_t, mm", "groove width W_g, mm", "left");
    assertThat(row(card, "Demo Curlew"))
        .containsExactly("Demo Curlew", "18.66 to 18.86: yes", "4.02 to 4.38: yes", "yes");
    assertThat(row(card, "Demo Plover"))
        .containsExactly("Demo Plover", "18.70 to 18.90: yes", "6.42 to 6.78: no", "no");
    assertThat(card.inWords().get(0))
        .isEqualTo(
            "Left: Demo Curlew. All others known here, 3, fall out by one reading at least.");
    assertThat(card.toText()).contains("D_t = 18.8 mm");
  }

  @Test
  void two_that_are_left_are_told_and_not_to_be_put_under_pressure() {
    PencilCard card = BIRDS
        .identify(
            List.of(read(Dimension.TIP_DIAMETER, 18.78), read(Dimension.COLLAR_DIAMETER, 23.86)))
        .pencilCard(UnitSystem.SI);
    assertThat(card.inWords().get(0))
        .startsWith("Left: ")
        .contains("Demo Curlew", "Demo Plover")
        .endsWith("All others known here, 2, fall out by one reading at least.");
    assertThat(card.inWords().get(1)).contains("do not put it under pressure");
    assertThat(card.inWords().get(card.inWords().size() - 1))
        .startsWith("By chances, which weigh all readings together: Demo ")
        .endsWith("; ambiguous.");
  }

  @Test
  void a_plug_of_nothing_known_leaves_none() {
    PencilCard card = BIRDS
        .identify(List.of(read(Dimension.TIP_DIAMETER, 15.0), read(Dimension.BORE, 7.0)))
        .pencilCard(UnitSystem.SI);
    assertThat(card.inWords().get(0)).startsWith("No profile is left");
    assertThat(card.tables().get(0).title()).startsWith("Profiles that come nearest");
    assertThat(card.inWords().get(1)).contains("do not put it under pressure");
  }

  private static final Identifier ALL = Identifier.of(DemoProfiles.birds());

  /** A Curlew whose groove of 4.20 mm was typed as 2.40 mm, two digits exchanged. */
  private static Identification slipped() {
    return ALL.identify(List.of(
        read(Dimension.TIP_DIAMETER, 18.76),
        read(Dimension.COLLAR_DIAMETER, 23.84),
        read(Dimension.TIP_LENGTH, 21.0),
        read(Dimension.GROOVE_WIDTH, 2.40)));
  }

  @Test
  void a_slip_is_named_as_the_answer_names_it() {
    Identification answer = slipped();
    assertThat(answer.slips()).isNotEmpty();
    PencilCard card = answer.pencilCard(UnitSystem.SI);
    assertThat(card.inWords())
        .anyMatch(line -> line.startsWith(answer.slips().get(0).inWords(UnitSystem.SI))
            && line.endsWith("The chances below hold if it reads the same again."));
  }

  @Test
  void those_that_come_nearest_stand_in_the_order_of_fewest_misses() {
    CardTable table = slipped().pencilCard(UnitSystem.SI).tables().get(0);
    assertThat(table.title()).startsWith("Profiles that come nearest");
    List<Long> misses = table.rows().stream()
        .map(row -> row.stream().filter(cell -> cell.endsWith(": no")).count())
        .toList();
    assertThat(misses).isSorted().hasSizeGreaterThan(2);
    assertThat(misses.get(0)).isEqualTo(1L);
  }

  @Test
  void one_that_is_left_and_not_identified_says_why() {
    PencilCard card = BIRDS
        .identify(List.of(read(Dimension.TIP_DIAMETER, 18.80), read(Dimension.GROOVE_WIDTH, 4.25)))
        .pencilCard(UnitSystem.SI);
    assertThat(card.inWords().get(0)).startsWith("Left: Demo Curlew.");
    assertThat(card.inWords().get(1))
        .startsWith("The limits alone settle no profile, because the sizes known here are invented")
        .contains("; a near copy may differ in what was not read, the collar diameter")
        .endsWith(": do not put it under pressure with one that seems to fit.");
  }

  /** One reading three scatters off rules a profile out by its limits, and leaves it the likeliest by chances. */
  @Test
  void a_profile_that_fell_out_and_is_the_likeliest_is_explained() {
    PencilCard card = BIRDS
        .identify(List.of(
            read(Dimension.TIP_DIAMETER, 18.64),
            read(Dimension.COLLAR_DIAMETER, 23.84),
            read(Dimension.GROOVE_WIDTH, 4.20)))
        .pencilCard(UnitSystem.SI);
    assertThat(card.inWords().get(0)).startsWith("No profile is left");
    assertThat(card.inWords().get(card.inWords().size() - 1))
        .contains("Demo Curlew ")
        .endsWith("so one that fell out can still be the likeliest.");
  }

  @Test
  void a_reading_stays_in_the_unit_of_its_caliper_with_the_other_beside() {
    List<PlugReading> readings = List.of(
        read(Dimension.TIP_DIAMETER, 18.80),
        PlugReading.of(
            Dimension.GROOVE_WIDTH, Reading.of(Length.of(0.1673, LengthUnit.INCH), mm(0.02))));
    PencilCard us = BIRDS.identify(readings).pencilCard(UnitSystem.US);
    assertThat(us.tables().get(0).heads()).contains("tip diameter D_t, mm", "groove width W_g, in");
    assertThat(row(us, "Demo Curlew").get(1)).isEqualTo("18.66 to 18.86: yes");
    assertThat(us.toText())
        .contains(
            "D_t = 18.8 mm",
            "W_g = 0.1673 in",
            "Read in millimetres, and compared in millimetres: D_t is 0.7402 in.");
    PencilCard si = BIRDS.identify(readings).pencilCard(UnitSystem.SI);
    assertThat(si.tables().get(0).heads()).contains("groove width W_g, in");
    assertThat(si.toText()).contains("Read in inches, and compared in inches: W_g is 4.249 mm.");
  }

  /** Metal goes in one direction: a tip gets smaller, a groove wider, and the length to the stop stays. */
  @Test
  void wear_moves_one_limit() {
    List<PlugReading> readings = List.of(
        read(Dimension.TIP_DIAMETER, 18.76),
        read(Dimension.INSERTION_LENGTH, 33.5),
        read(Dimension.GROOVE_WIDTH, 4.20));
    List<String> asNew = row(BIRDS.identify(readings).pencilCard(UnitSystem.SI), "Demo Curlew");
    List<String> worn = row(
        BIRDS.withWearAllowance(mm(0.2)).identify(readings).pencilCard(UnitSystem.SI),
        "Demo Curlew");
    assertThat(number(worn.get(1), 0)).isCloseTo(number(asNew.get(1), 0) - 0.2, close());
    assertThat(number(worn.get(1), 1)).isEqualTo(number(asNew.get(1), 1));
    assertThat(worn.get(2)).isEqualTo(asNew.get(2));
    assertThat(number(worn.get(3), 0)).isEqualTo(number(asNew.get(3), 0));
    assertThat(number(worn.get(3), 1)).isCloseTo(number(asNew.get(3), 1) + 0.2, close());
  }

  private static Offset<Double> close() {
    return within(1.0e-9);
  }

  private static double number(String cell, int end) {
    return Double.parseDouble(cell.split(" to |: ", -1)[end].replace('−', '-'));
  }

  @Test
  void a_size_that_a_profile_does_not_know_is_said_to_be_so_and_no_reading_is_no_table() {
    PlugProfile known = PlugProfile.builder("known")
        .displayName("Known")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(9.95), mm(10.05)))
        .build();
    PlugProfile other = PlugProfile.builder("other")
        .displayName("Other")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.BORE, PartSpread.limits(mm(7.9), mm(8.1)))
        .build();
    Identifier identifier = Identifier.of(ReferenceSet.of("mixed", List.of(known, other)));
    PencilCard card = identifier
        .identify(List.of(read(Dimension.TIP_DIAMETER, 10.0), read(Dimension.TIP_LENGTH, 20.0)))
        .pencilCard(UnitSystem.SI);
    assertThat(row(card, "Known").get(2)).isEqualTo("not known");
    assertThat(card.inWords().get(0))
        .isEqualTo("Left: Known. Of 1 known here nothing that was read is known: they stay open.");
    assertThat(card.inWords().get(1)).contains("do not put it under pressure");
    PencilCard nothing = identifier.identify(List.of()).pencilCard(UnitSystem.SI);
    assertThat(nothing.tables()).isEmpty();
    assertThat(nothing.inWords().get(0)).startsWith("No size was read");
  }

  /** Profiles by deviation, by limits and by measured pieces, near one another. */
  private static ReferenceSet mixed() {
    List<PlugProfile> profiles = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double off = 0.11 * i;
      profiles.add(profile("bell" + i, off, PartSpread::normal));
      profiles.add(profile(
          "limits" + i,
          off + 0.03,
          (nominal, s) -> PartSpread.limits(
              nominal.minus(Length.ofMillimetres(0.1)), nominal.plus(Length.ofMillimetres(0.1)))));
      profiles.add(
          profile("pieces" + i, off + 0.06, (nominal, s) -> new PartSpread.Sample(4, nominal, s)));
    }
    return ReferenceSet.of("mixed", profiles);
  }

  private interface Spread {
    PartSpread of(Length nominal, Length deviation);
  }

  private static PlugProfile profile(String id, double off, Spread spread) {
    return PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, spread.of(mm(11.9 + off), mm(0.03)))
        .dimension(Dimension.TIP_LENGTH, spread.of(mm(16.2 + off), mm(0.05)))
        .dimension(Dimension.GROOVE_WIDTH, spread.of(mm(5.1 + off), mm(0.04)))
        .build();
  }

  private static double given(PencilCard card, String symbol) {
    return card.given().stream()
        .filter(term -> term.symbol().equals(symbol))
        .map(Term::value)
        .mapToDouble(Double::parseDouble)
        .findFirst()
        .orElseThrow();
  }

  /** The rule in the exact numbers: the card must leave the same profiles, in both systems of units. */
  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void every_comparison_of_the_printed_numbers_turns_out_as_printed(UnitSystem units) {
    Random random = new Random(5);
    Identifier identifier = Identifier.of(mixed()).withWearAllowance(mm(0.05));
    int settled = 0;
    int no = 0;
    for (int i = 0; i < 150; i++) {
      List<PlugReading> readings = new ArrayList<>();
      for (Dimension dimension :
          List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH, Dimension.GROOVE_WIDTH)) {
        double nominal = dimension == Dimension.TIP_DIAMETER
            ? 11.9
            : dimension == Dimension.TIP_LENGTH ? 16.2 : 5.1;
        double size = nominal + 0.25 + 0.2 * random.nextGaussian();
        if (random.nextInt(5) > 0) {
          Length shown = units == UnitSystem.US
              ? Length.of(0.0005 * Math.rint(size / 25.4 / 0.0005), LengthUnit.INCH)
              : mm(0.01 * Math.rint(100.0 * size));
          readings.add(PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, shown));
        }
      }
      if (readings.isEmpty()) {
        continue;
      }
      Identification answer = identifier.identify(readings);
      PencilCard card = answer.pencilCard(units);
      CardTable table = card.tables().get(0);
      for (List<String> row : table.rows()) {
        for (int column = 1; column < row.size() - 1; column++) {
          String[] cell = row.get(column).split(" to |: ", -1);
          if (cell[2].equals("on the limit")) {
            continue;
          }
          String head = table.heads().get(column);
          String symbol =
              head.substring(head.lastIndexOf(' ', head.indexOf(',')) + 1, head.indexOf(','));
          double size = given(card, symbol);
          boolean fits = size >= Double.parseDouble(cell[0]) && size <= Double.parseDouble(cell[1]);
          assertThat(fits ? "yes" : "no").as("%s of %s", head, row).isEqualTo(cell[2]);
          settled++;
          no += fits ? 0 : 1;
        }
        boolean isLeft = row.get(row.size() - 1).equals("yes");
        if (isLeft) {
          assertThat(row.subList(1, row.size() - 1)).noneMatch(cell -> cell.endsWith(": no"));
        }
      }
      List<String> left = table.rows().stream()
          .filter(row -> row.get(row.size() - 1).equals("yes"))
          .map(row -> row.get(0))
          .toList();
      assertThat(left)
          .containsExactlyInAnyOrderElementsOf(answer.candidates().stream()
              .filter(candidate -> candidate.largestMisfitProbability() >= 0.01)
              .map(candidate -> candidate.profile().displayName())
              .toList());
    }
    assertThat(settled).isGreaterThan(1500);
    assertThat(no).isBetween(settled / 10, 9 * settled / 10);
  }
}
