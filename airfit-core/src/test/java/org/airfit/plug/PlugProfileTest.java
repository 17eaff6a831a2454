package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.Rows;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.measure.Wear;
import org.airfit.quantity.Length;
import org.airfit.safety.Medium;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlugProfileTest {

  private static final Source HERE = Source.demo("a profile for a test");

  private static PartSpread near(double mm) {
    return PartSpread.normal(Length.ofMillimetres(mm), Length.ofMillimetres(0.02));
  }

  private static PlugProfile.Builder sound() {
    return PlugProfile.builder("wren")
        .displayName("Wren")
        .aliases("W", "small W")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, near(10.0))
        .dimension(Dimension.COLLAR_DIAMETER, near(13.0))
        .dimension(Dimension.TIP_LENGTH, near(15.0))
        .dimension(Dimension.INSERTION_LENGTH, near(25.0))
        .dimension(Dimension.GROOVE_WIDTH, near(4.0))
        .dimension(Dimension.GROOVE_DIAMETER, near(9.0))
        .dimension(Dimension.TIP_TO_COLLAR, near(10.0))
        .dimension(Dimension.SHOULDER_DIAMETER, near(12.0))
        .dimension(Dimension.BORE, near(6.0));
  }

  private static String finding(PlugProfile.Builder builder) {
    assertThat(builder.findings()).isNotEmpty();
    return builder.findings().get(0).message();
  }

  @Test
  void a_sound_profile_is_built_and_tells_what_it_holds() {
    PlugProfile wren = sound().build();
    assertThat(sound().findings()).isEmpty();
    assertThat(wren.id()).isEqualTo("wren");
    assertThat(wren.displayName()).isEqualTo("Wren");
    assertThat(wren.aliases()).containsExactly("W", "small W");
    assertThat(wren.medium()).isEqualTo(Medium.COMPRESSED_AIR);
    assertThat(wren.source()).isEqualTo(HERE);
    assertThat(wren.provenance()).isEqualTo(Provenance.standardEntered());
    assertThat(wren.dimensions().keySet()).containsExactly(Dimension.values());
    assertThat(wren.spread(Dimension.BORE)).contains(near(6.0));
    assertThat(wren).hasToString("Wren (entered from a standard)");
  }

  @Test
  void impossible_sizes_are_found_one_by_one() {
    assertThat(finding(sound().dimension(Dimension.BORE, near(9.5))))
        .contains("a wall must remain under the groove");
    assertThat(finding(sound()
            .dimension(Dimension.BORE, near(10.0))
            .dimension(Dimension.GROOVE_DIAMETER, near(11.0))))
        .contains("the tip needs a wall");
    assertThat(finding(sound().dimension(Dimension.TIP_DIAMETER, near(13.5))))
        .contains("the collar is the largest diameter");
    assertThat(finding(sound().dimension(Dimension.GROOVE_DIAMETER, near(13.0))))
        .contains("the balls cannot lock");
    assertThat(finding(sound().dimension(Dimension.TIP_TO_COLLAR, near(15.5))))
        .contains("the collar starts before it ends");
    assertThat(finding(sound().dimension(Dimension.INSERTION_LENGTH, near(14.0))))
        .contains("the groove lies in front of the stop face");
    assertThat(finding(sound().dimension(Dimension.GROOVE_WIDTH, near(10.5))))
        .contains("less the tip length");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> sound().dimension(Dimension.BORE, near(9.5)).confirmUnusual().build())
        .withMessageStartingWith("profile wren: bore (d_b) must be below");
  }

  @Test
  void a_tip_as_wide_as_its_collar_and_a_groove_up_to_the_stop_are_possible() {
    assertThat(sound().dimension(Dimension.TIP_DIAMETER, near(13.0)).findings()).isEmpty();
    assertThat(sound().dimension(Dimension.GROOVE_WIDTH, near(10.0)).findings()).isEmpty();
  }

  @Test
  void inches_typed_as_millimetres_are_found_and_the_cure_is_said() {
    PlugProfile.Builder inches = PlugProfile.builder("wren")
        .from(Provenance.standardEntered(), HERE)
        .dimension(
            Dimension.TIP_DIAMETER,
            PartSpread.normal(Length.ofMillimetres(0.394), Length.ofMillimetres(0.001)));
    assertThat(finding(inches)).contains("inches typed as millimetres", "10.01 mm");
    assertThatIllegalArgumentException().isThrownBy(inches::build);
    assertThat(inches.confirmUnusual().build().id()).isEqualTo("wren");
    assertThat(finding(sound().dimension(Dimension.COLLAR_DIAMETER, near(0.512))))
        .contains("inches typed as millimetres");
    assertThat(finding(sound().dimension(Dimension.TIP_DIAMETER, near(254.0))))
        .contains("millimetres typed as inches");
    PlugProfile.Builder alone = PlugProfile.builder("wren")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, near(254.0));
    assertThat(finding(alone)).contains("millimetres typed as inches");
  }

  @Test
  void a_deviation_that_is_a_size_is_found() {
    assertThat(finding(sound()
            .dimension(
                Dimension.BORE,
                PartSpread.normal(Length.ofMillimetres(6.0), Length.ofMillimetres(1.0)))))
        .contains("should be far below its size");
  }

  @Test
  void welding_gas_and_hydraulic_profiles_are_not_taken_for_air() {
    PlugProfile.Builder welding = sound().displayName("Welding gas plug");
    assertThat(finding(welding)).contains("never offered for air");
    assertThat(welding.medium(Medium.WELDING_GAS).build().medium()).isEqualTo(Medium.WELDING_GAS);
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            ReferenceSet.of("set", List.of(sound().medium(Medium.WELDING_GAS).build())));
  }

  @Test
  void more_pieces_than_were_measured_cannot_be_claimed() {
    PartSpread three = PartSpread.measured(List.of(
        Length.ofMillimetres(10.0), Length.ofMillimetres(10.02), Length.ofMillimetres(9.99)));
    PlugProfile.Builder claims = PlugProfile.builder("wren")
        .from(Provenance.userMeasured(5), HERE)
        .dimension(Dimension.TIP_DIAMETER, three);
    assertThat(finding(claims)).contains("pieces measured must be at least 5");
    assertThat(
            claims.from(Provenance.userMeasured(3), HERE).build().provenance().canIdentify())
        .isFalse();
  }

  @Test
  void what_is_missing_is_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> PlugProfile.builder(" "));
    assertThatIllegalArgumentException().isThrownBy(() -> sound().aliases(" "));
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            PlugProfile.builder("wren").dimension(Dimension.BORE, near(6.0)).build())
        .withMessageContaining("provenance of profile wren must be given");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> PlugProfile.builder("wren").from(Provenance.synthetic(), HERE).build())
        .withMessageContaining("dimensions of profile wren must be at least one");
  }

  /** invented_letters.csv: shops do not agree what a letter means, so a letter must answer with every profile. */
  @Test
  void a_letter_that_shops_give_to_several_profiles_answers_with_all_of_them() {
    Map<String, List<String>> letters = new LinkedHashMap<>();
    Rows.of(PlugProfileTest.class, "invented_letters.csv")
        .forEach(row -> letters
            .computeIfAbsent(row.text("profile_meant"), any -> new ArrayList<>())
            .add(row.text("letter")));
    List<PlugProfile> profiles = new ArrayList<>();
    letters.forEach((profile, words) -> profiles.add(PlugProfile.builder(profile)
        .aliases(words.toArray(new String[0]))
        .from(Provenance.synthetic(), HERE)
        .dimension(Dimension.TIP_DIAMETER, near(10.0))
        .build()));
    ReferenceSet set = ReferenceSet.of("letters", profiles);
    AliasLookup meant = set.lookUp("k");
    assertThat(meant.profiles()).extracting(PlugProfile::id).containsExactly("Plover", "Dunlin");
    assertThat(meant.warning()).contains("Plover or Dunlin", "measure the plug");
    assertThat(meant.asked()).isEqualTo("k");
    assertThat(set.lookUp("R").profiles()).extracting(PlugProfile::id).containsExactly("Dunlin");
    assertThat(set.lookUp("no such letter").profiles()).isEmpty();
    for (String blank : List.of("", " ")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> set.lookUp(blank))
          .withMessageStartingWith("word to look up must not be blank, was \"" + blank + "\"");
    }
    assertThat(set.lookUp("no such letter").warning()).contains("names no profile");
  }

  @Test
  void a_set_refuses_twins_and_emptiness_and_tells_its_weakest_provenance() {
    assertThatIllegalArgumentException().isThrownBy(() -> ReferenceSet.of("empty", List.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> ReferenceSet.of("twins", List.of(sound().build(), sound().build())));
    ReferenceSet set = ReferenceSet.of("one", List.of(sound().build()));
    assertThat(set.weakestProvenance()).isEqualTo(Provenance.standardEntered());
    assertThat(set.dimensions()).containsExactly(Dimension.values());
    assertThat(set.profile("wren")).isPresent();
    assertThat(set.profile("robin")).isEmpty();
    assertThat(set).hasToString("one: 1 profile, entered from a standard");
    assertThat(DemoProfiles.birds().toString()).contains("4 profiles", "invented");
  }

  @Test
  void provenances_are_ordered_by_trust() {
    assertThat(Provenance.standardEntered().weaker(Provenance.userMeasured(9)))
        .isEqualTo(Provenance.userMeasured(9));
    assertThat(Provenance.userMeasured(9).weaker(Provenance.userMeasured(2)))
        .isEqualTo(Provenance.userMeasured(2));
    assertThat(Provenance.userMeasured(1)).hasToString("measured by the user on 1 piece");
    assertThat(Provenance.userMeasured(6)).hasToString("measured by the user on 6 pieces");
    assertThatIllegalArgumentException().isThrownBy(() -> Provenance.userMeasured(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Provenance(Provenance.Kind.SYNTHETIC, 3));
  }

  @Test
  void readings_and_spreads_of_nothing_are_refused() {
    Length zero = Length.ofMetres(0.0);
    Length one = Length.ofMillimetres(1.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.BORE, Reading.of(zero, one)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.BORE, Reading.of(one, zero)))
        .withMessageContaining("no reading is perfect");
    assertThatIllegalArgumentException().isThrownBy(() -> PartSpread.normal(zero, one));
    assertThatIllegalArgumentException().isThrownBy(() -> PartSpread.normal(one, zero));
    assertThatIllegalArgumentException().isThrownBy(() -> PartSpread.limits(one, one));
    assertThatIllegalArgumentException().isThrownBy(() -> PartSpread.measured(List.of(one)));
    assertThatIllegalArgumentException().isThrownBy(() -> PartSpread.measured(List.of(one, one)));
    assertThatIllegalArgumentException().isThrownBy(() -> new PartSpread.Sample(1, one, one));
    PartSpread.Sample sample = new PartSpread.Sample(3, one, Length.ofMillimetres(0.01));
    for (double wrong : new double[] {0.0, 1.0, Double.NaN}) {
      assertThatIllegalArgumentException().isThrownBy(() -> sample.nextPiece(wrong));
    }
    assertThat(PartSpread.limits(one, one.times(2.0)).nominal().millimetres()).isEqualTo(1.5);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(
            Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, Length.ofMillimetres(600.1)));
    assertThat(PlugReading.of(Dimension.BORE, Instrument.DIGITAL_CALIPER, one))
        .asString()
        .startsWith("bore (d_b) 1.00 mm ± 0.0");
  }

  @Test
  void every_dimension_says_what_it_is_and_how_it_is_taken() {
    for (Dimension dimension : Dimension.values()) {
      assertThat(dimension.definition()).isNotBlank();
      assertThat(dimension.howToMeasure()).isNotBlank();
      assertThat(dimension.toString()).contains(dimension.label(), dimension.symbol());
      assertThat(dimension.wearShrinks()).isEqualTo(dimension.wear() == Wear.SHRINKS);
    }
  }

  @Test
  void a_socket_alone_cannot_be_told_and_the_ways_out_are_given() {
    SocketAnswer answer = SocketAnswer.alone();
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    assertThat(answer.waysOut())
        .extracting(SocketRemedy::title)
        .containsExactly(
            "Find its plug",
            "Try known plugs, depressurised",
            "Replace the pair",
            "Fit a universal socket");
    assertThat(answer.cautions()).isNotEmpty();
    assertThat(answer.working().toText()).contains(answer.reason());
    assertThat(answer).hasToString(answer.reason());
    assertThat(answer.waysOut().get(0).toString()).contains("Check: ");
  }

  private static PlugProfile.Builder tipAndCollar(double tip, double collar) {
    return PlugProfile.builder("wren")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, near(tip))
        .dimension(Dimension.COLLAR_DIAMETER, near(collar));
  }

  /** A factor of 25.4 puts one of two right where the smaller is between 1/25.4 and 1/4 of the larger. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "13.5 | 13 | 13 mm, was 13.5 mm | check both, and that they were not exchanged",
        "30 | 10 | 10 mm, was 30 mm | check both, and that they were not exchanged",
        "20 | 5 | 5 mm, was 20 mm | check both, and that they were not exchanged",
        "10 | 0.3 | 0.3 mm, was 10 mm | check both, and that they were not exchanged",
        "254 | 13 | 13 mm, was 254 mm | the tip diameter looks like millimetres typed as inches, 10 mm",
        "10 | 0.5 | 0.5 mm, was 10 mm"
            + " | the collar diameter looks like inches typed as millimetres, 0.5 in is 12.7 mm",
        "25.4 | 1 | 1 mm, was 25.4 mm"
            + " | the collar diameter looks like inches typed as millimetres, 1 in is 25.4 mm"
      })
  void of_two_sizes_that_cannot_be_the_one_in_the_other_unit_is_told(
      double tip, double collar, String sizes, String hint) {
    assertThat(tipAndCollar(tip, collar).findings().get(0))
        .hasToString("tip diameter (D_t) must be at most the collar diameter (D_c) of " + sizes
            + ": the collar is the largest diameter in front of the groove; " + hint);
  }

  /** 0.9 in is 22.86 mm, which no tip has, but a size below 1 mm none has either. */
  @Test
  void a_size_below_a_millimetre_is_doubtful_whatever_it_is_in_inches() {
    PlugProfile.Builder one = PlugProfile.builder("wren").from(Provenance.standardEntered(), HERE);
    assertThat(one.dimension(Dimension.TIP_DIAMETER, near(1.0)).findings()).isEmpty();
    assertThat(one.dimension(Dimension.TIP_DIAMETER, near(0.9)).findings())
        .singleElement()
        .hasToString(
            "tip diameter (D_t) of an air-line plug is hardly 0.9 mm: it looks like inches typed"
                + " as millimetres, 0.9 in is 22.86 mm; type the unit, or confirm");
  }

  @ParameterizedTest
  @CsvSource({"0.59, false", "0.6, false", "0.61, true"})
  void a_deviation_is_doubtful_above_a_tenth_of_the_size(double deviation, boolean doubtful) {
    PlugProfile.Builder wren = sound()
        .dimension(
            Dimension.BORE,
            PartSpread.normal(Length.ofMillimetres(6.0), Length.ofMillimetres(deviation)));
    assertThat(wren.findings()).hasSize(doubtful ? 1 : 0);
  }

  /** The tip is as long as the plug goes in: nothing is left for a groove. */
  @Test
  void a_groove_needs_room_in_front_of_the_stop() {
    assertThat(finding(sound().dimension(Dimension.TIP_LENGTH, near(25.0))))
        .isEqualTo(
            "groove width (W_g) must be at most 0 mm, the insertion length (L_i) less the tip"
                + " length (L_g), was 4 mm: the groove lies in front of the stop face; check all three");
  }
}
