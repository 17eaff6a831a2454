package org.airfit.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Residual;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ReadingOverlayTest {

  private static final ReferenceSet BIRDS = DemoProfiles.birds();
  private static final PlugProfile PLOVER = BIRDS.profile("demo-plover").orElseThrow();

  private static Identification answer(ReferenceSet set, Map<Dimension, Double> millimetres) {
    List<PlugReading> readings = new ArrayList<>();
    millimetres.forEach((dimension, mm) -> readings.add(
        PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, Length.ofMillimetres(mm))));
    return Identifier.of(set).identify(readings);
  }

  /** A plover whose sizes all read by so much above nominal. */
  private static Identification plover(double above) {
    Map<Dimension, Double> sizes = new EnumMap<>(Dimension.class);
    PLOVER
        .dimensions()
        .forEach(
            (dimension, spread) -> sizes.put(dimension, spread.nominal().millimetres() + above));
    return answer(BIRDS, sizes);
  }

  private static String group(String svg, Dimension dimension) {
    String start = "data-dimension=\"" + dimension.symbol() + "\"";
    assertThat(svg).contains(start);
    String rest = svg.substring(svg.indexOf(start));
    return rest.substring(0, rest.indexOf("</g>"));
  }

  private static boolean isLength(Dimension dimension) {
    return List.of("L_c", "L_g", "L_i", "W_g").contains(dimension.symbol());
  }

  /** Start points of the two straight lines of a reading: the nominal edge in ink, then the reading in red. */
  private static double[] edgeAndRead(String group, boolean across) {
    Matcher line =
        Pattern.compile("M([0-9.]+) ([0-9.]+)L[0-9.]+ [0-9.]+\" fill=\"none\"").matcher(group);
    double[] at = new double[2];
    for (int i = 0; i < 2; i++) {
      assertThat(line.find()).isTrue();
      at[i] = Double.parseDouble(line.group(across ? 1 : 2));
    }
    return at;
  }

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void a_reading_lies_as_far_from_its_edge_as_the_magnification_says(Dimension dimension) {
    double above = 0.04;
    ReadingOverlay overlay = ReadingOverlay.of(plover(above));
    boolean length = isLength(dimension);
    double[] at = edgeAndRead(group(overlay.svg(), dimension), length);
    double drawn = length ? at[1] - at[0] : 2.0 * (at[0] - at[1]); // y grows downward
    // printed to a thousandth of a millimetre, twice for a diameter
    assertThat(drawn).isCloseTo(overlay.magnification() * above, within(0.0021));
  }

  /** Sizes read at nominal lie on their edges. */
  @ParameterizedTest
  @EnumSource(Dimension.class)
  void a_reading_at_nominal_lies_on_its_edge(Dimension dimension) {
    String group = group(ReadingOverlay.of(plover(0.0)).svg(), dimension);
    double[] at = edgeAndRead(group, isLength(dimension));
    assertThat(at[1]).isCloseTo(at[0], within(0.0011));
  }

  /**
   * Half a diameter's scatter of two standard deviations to each side: what is allowed for a new plug is centred on its
   * edge.
   */
  @Test
  void the_band_is_two_standard_deviations_each_way() {
    Identification answer = plover(0.0);
    ReadingOverlay overlay = ReadingOverlay.of(answer);
    Residual tip = answer.candidates().get(0).residuals().get(0);
    assertThat(tip.dimension()).isEqualTo(Dimension.TIP_DIAMETER);
    Matcher band = Pattern.compile(
            "<rect x=\"[0-9.]+\" y=\"([0-9.]+)\" width=\"[0-9.]+\" height=\"([0-9.]+)\"")
        .matcher(group(overlay.svg(), Dimension.TIP_DIAMETER));
    assertThat(band.find()).isTrue();
    double worn = tip.allowedWear().millimetres();
    assertThat(Double.parseDouble(band.group(2)))
        .isCloseTo(
            0.5 * overlay.magnification() * (4.0 * tip.scatter().millimetres() + worn),
            within(0.0011));
  }

  @Test
  void every_profile_that_remains_likely_is_drawn_up_to_three() {
    Identification doubt = answer(
        BIRDS,
        Map.of(
            Dimension.TIP_DIAMETER, 18.77,
            Dimension.COLLAR_DIAMETER, 23.85,
            Dimension.TIP_LENGTH, 21.05));
    ReadingOverlay overlay = ReadingOverlay.of(doubt);
    assertThat(overlay.candidates()).hasSize(2).isEqualTo(doubt.likely());
    assertThat(overlay.svg())
        .contains("Demo Curlew")
        .contains("Demo Plover")
        .doesNotContain("Heron");
    assertThat(overlay.identification()).isSameAs(doubt);

    List<PlugProfile> alike = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      PlugProfile.Builder twin =
          PlugProfile.builder("twin-" + i).from(Provenance.synthetic(), Source.demo("test"));
      PLOVER.dimensions().forEach(twin::dimension);
      alike.add(twin.build());
    }
    Identification five = answer(
        ReferenceSet.of("twins", alike),
        Map.of(Dimension.TIP_DIAMETER, 18.80, Dimension.COLLAR_DIAMETER, 23.88));
    assertThat(ReadingOverlay.of(five).candidates()).hasSize(3);
  }

  @Test
  void the_size_of_the_drawing_is_that_of_its_numbers() {
    ReadingOverlay overlay = ReadingOverlay.of(plover(0.02));
    Matcher size = Pattern.compile(
            "width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"")
        .matcher(overlay.svg());
    assertThat(size.find()).isTrue();
    assertThat(overlay.width().millimetres())
        .isCloseTo(Double.parseDouble(size.group(1)), within(0.001));
    assertThat(overlay.height().millimetres())
        .isCloseTo(Double.parseDouble(size.group(2)), within(0.001));
    assertThat(size.group(3)).isEqualTo(size.group(1));
    assertThat(size.group(4)).isEqualTo(size.group(2));
  }

  @Test
  void readings_of_a_stranger_are_drawn_to_the_nearest_and_marked() {
    Identification stranger = answer(
        BIRDS,
        Map.of(
            Dimension.TIP_DIAMETER, 40.0,
            Dimension.COLLAR_DIAMETER, 46.0,
            Dimension.TIP_LENGTH, 21.0,
            Dimension.TIP_TO_COLLAR, 2.0,
            Dimension.BORE, 2.0,
            Dimension.INSERTION_LENGTH, 60.0));
    assertThat(stranger.verdict()).isEqualTo(PlugVerdict.NO_MATCH);
    ReadingOverlay overlay = ReadingOverlay.of(stranger);
    assertThat(overlay.magnification()).isOne();
    assertThat(overlay.candidates()).hasSize(1);
    assertThat(overlay.svg()).contains("does not fit").contains("drawn as large as it is");
    // beyond reach: no red line in the group, a triangle instead
    assertThat(group(overlay.svg(), Dimension.TIP_DIAMETER))
        .doesNotContain("stroke-width=\"0.5\"")
        .contains("fill=\"" + PlugSvg.READ + "\"");
    assertThat(group(overlay.svg(), Dimension.TIP_TO_COLLAR))
        .doesNotContain("stroke-width=\"0.5\"")
        .contains("fill=\"" + PlugSvg.READ + "\"");
  }

  @Test
  void a_profile_without_all_its_sizes_has_only_the_ladder() {
    PlugProfile bare = PlugProfile.builder("bare")
        .displayName("Bare & <plain>")
        .from(Provenance.userMeasured(6), Source.measured("test"))
        .dimension(
            Dimension.TIP_DIAMETER,
            PartSpread.limits(Length.ofMillimetres(11.9), Length.ofMillimetres(12.1)))
        .dimension(
            Dimension.COLLAR_DIAMETER,
            PartSpread.normal(Length.ofMillimetres(16), Length.ofMillimetres(0.1)))
        .build();
    ReadingOverlay overlay = ReadingOverlay.of(answer(
        ReferenceSet.of("bare", List.of(bare)),
        Map.of(Dimension.TIP_DIAMETER, 12.05, Dimension.COLLAR_DIAMETER, 15.95)));
    assertThat(overlay.svg())
        .doesNotContain("data-dimension")
        .doesNotContain("Outline", "Red line", "Red triangle") // no legend for what is not drawn
        .contains("Red square: the reading", "Shaded: where about 19 of 20")
        .contains("Bare &amp; &lt;plain&gt;")
        .contains(">12.05<")
        .contains(">+0.05<")
        .contains(">−0.05<");
  }

  @Test
  void without_anything_to_compare_there_is_nothing_to_draw() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ReadingOverlay.of(Identifier.of(BIRDS).identify(List.of())))
        .withMessageContaining("at least 1")
        .withMessageContaining("measure a dimension");
  }
}
