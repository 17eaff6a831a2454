package org.airfit.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.drawing.PlugSheet.Paper;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PlugSheetTest {

  private static final ReferenceSet BIRDS = DemoProfiles.birds();

  private static PlugProfile.Builder heronNamed(String id) {
    PlugProfile.Builder builder =
        PlugProfile.builder(id).from(Provenance.synthetic(), Source.demo("test"));
    BIRDS.profiles().get(0).dimensions().forEach(builder::dimension);
    return builder;
  }

  private static List<Double> ticks(String svg, String stroke) {
    List<Double> ticks = new ArrayList<>();
    Matcher tick =
        Pattern.compile("M([0-9.]+) ([0-9.]+)" + stroke + "-?[0-9.]+").matcher(svg);
    while (tick.find()) {
      ticks.add(Double.parseDouble(tick.group(stroke.equals("v") ? 1 : 2)));
    }
    return ticks;
  }

  /** ISO 216 gives A4 as 210 mm × 297 mm; ANSI/ASME Y14.1 size A is 8.5 in × 11 in. */
  @Test
  void pages_are_as_large_as_the_paper() {
    assertThat(PlugSheet.of(BIRDS, Paper.A4).pages().get(0))
        .startsWith("<svg ")
        .contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\"");
    assertThat(PlugSheet.of(BIRDS, Paper.LETTER).pages().get(0))
        .contains("width=\"215.9mm\" height=\"279.4mm\" viewBox=\"0 0 215.9 279.4\"");
    assertThat(Paper.LETTER.width().millimetres()).isCloseTo(215.9, within(1.0e-9));
    assertThat(Paper.A4.height().millimetres()).isCloseTo(297.0, within(1.0e-9));
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void every_page_has_a_ruler_of_fifty_millimetres_each_way(Paper paper) {
    for (String page : PlugSheet.of(BIRDS, paper).pages()) {
      for (String stroke : List.of("v", "h")) {
        List<Double> ticks = ticks(page, stroke);
        assertThat(ticks).hasSize(51);
        for (int i = 0; i <= 50; i++) {
          assertThat(ticks.get(i) - ticks.get(0)).isCloseTo(i, within(1.0e-9));
        }
      }
      assertThat(page).contains("steel rule").contains("print again at 100 %");
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void outlines_are_moved_and_never_scaled(Paper paper) {
    PlugSheet sheet = PlugSheet.of(BIRDS, paper);
    String all = String.join("", sheet.pages());
    assertThat(all).doesNotContain("scale(").contains("translate(");
    // tip face to stop face of the heron, 46 mm, stands as a length of its outline
    assertThat(all).contains("M28 51.95 L28 40.15").contains("L74 38.15");
    assertThat(sheet.leftOut()).isEmpty();
    assertThat(sheet.paper()).isEqualTo(paper);
    assertThat(sheet.referenceSet()).isSameAs(BIRDS);
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void every_size_of_every_profile_stands_in_its_table(Paper paper) {
    String all = String.join("", PlugSheet.of(BIRDS, paper).pages());
    for (PlugProfile profile : BIRDS.profiles()) {
      assertThat(all).contains(">" + profile.displayName() + "<");
      profile
          .dimensions()
          .values()
          .forEach(spread -> assertThat(all)
              .contains(">" + Digits.fixed(spread.nominal().millimetres(), 2) + "</text>"));
    }
    for (Dimension dimension : Dimension.values()) {
      assertThat(all).contains(dimension.label());
    }
    assertThat(all).contains("invented, of no real plug").contains("page 1 of 2");
  }

  /**
   * A twentieth of the chance is left outside by 1.96 standard deviations of a bell, and by Student's t of 2.776 with
   * four degrees of freedom (printed tables of both); a rectangle keeps all inside its limits.
   */
  @Test
  void the_usual_deviation_holds_nineteen_of_twenty() {
    Length twenty = Length.ofMillimetres(20.0);
    assertThat(PlugSheet.usualMm(PartSpread.normal(twenty, Length.ofMillimetres(1.0))))
        .isCloseTo(1.96, within(0.005));
    assertThat(PlugSheet.usualMm(
            new PartSpread.Sample(5, twenty, Length.ofMillimetres(1.0 / Math.sqrt(1.2)))))
        .isCloseTo(2.776, within(0.0005));
    assertThat(PlugSheet.usualMm(PartSpread.limits(twenty, Length.ofMillimetres(20.5))))
        .isCloseTo(0.25, within(1.0e-9));
  }

  @Test
  void what_cannot_be_drawn_is_named_with_its_reason() {
    PlugProfile bare = PlugProfile.builder("bare <one>")
        .from(Provenance.synthetic(), Source.demo("test"))
        .dimension(
            Dimension.BORE, PartSpread.normal(Length.ofMillimetres(6), Length.ofMillimetres(0.1)))
        .build();
    PlugProfile huge = heronNamed("huge")
        .dimension(
            Dimension.INSERTION_LENGTH,
            PartSpread.normal(Length.ofMillimetres(130), Length.ofMillimetres(0.1)))
        .confirmUnusual()
        .build();
    PlugSheet sheet = PlugSheet.of(ReferenceSet.of("odd", List.of(bare, huge)), Paper.A4);
    assertThat(sheet.leftOut()).containsOnlyKeys(bare, huge);
    assertThat(sheet.leftOut().get(bare)).startsWith("not known: tip diameter, collar diameter");
    assertThat(sheet.leftOut().get(huge)).isEqualTo("too large for this paper");
    assertThat(sheet.pages()).hasSize(1);
    assertThat(sheet.pages().get(0))
        .contains("Not drawn: bare &lt;one&gt;, not known: tip diameter")
        .contains("Not drawn: huge, too large for this paper.");
  }

  @Test
  void a_long_plug_is_drawn_below_its_table() {
    PlugProfile long70 = heronNamed("long")
        .dimension(
            Dimension.INSERTION_LENGTH,
            PartSpread.normal(Length.ofMillimetres(70), Length.ofMillimetres(0.1)))
        .confirmUnusual()
        .build();
    PlugSheet sheet = PlugSheet.of(ReferenceSet.of("long", List.of(long70)), Paper.A4);
    assertThat(sheet.leftOut()).isEmpty();
    Matcher moved = Pattern.compile("translate\\(([0-9.]+) ([0-9.]+)\\)")
        .matcher(sheet.pages().get(0));
    assertThat(moved.find()).isTrue();
    // 210 mm less margin 12, ruler 11 and figure 28 + 70 + 9 + 24
    assertThat(Double.parseDouble(moved.group(1))).isCloseTo(56.0, within(1.0e-9));
    assertThat(Double.parseDouble(moved.group(2))).isGreaterThan(44.0 + 9 * 4.8);
  }

  @Test
  void the_form_of_the_groove_is_told_in_words() {
    ReferenceSet set = ReferenceSet.of(
        "grooves",
        List.of(
            heronNamed("flat").grooveForm(GrooveForm.FLAT).build(),
            heronNamed("vee").grooveForm(GrooveForm.VEE).build()));
    assertThat(String.join("", PlugSheet.of(set, Paper.A4).pages()))
        .contains("locking groove flat<")
        .contains("locking groove V-shaped; drawn flat, at its size only<");
    assertThat(String.join("", PlugSheet.of(BIRDS, Paper.A4).pages()))
        .doesNotContain("locking groove");
  }

  @Test
  void a_large_set_takes_more_pages_and_loses_nobody() {
    List<PlugProfile> many = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      many.add(heronNamed("heron-" + i).build());
    }
    PlugSheet sheet = PlugSheet.of(ReferenceSet.of("many", many), Paper.LETTER);
    String all = String.join("", sheet.pages());
    many.forEach(profile -> assertThat(all).containsOnlyOnce(">" + profile.displayName() + "<"));
    assertThat(sheet.pages()).hasSize(10); // two of 73 mm in 217 mm of room, never torn apart
    assertThat(all).contains("page 10 of 10");
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void the_html_page_sets_the_paper_and_no_margin(Paper paper) {
    PlugSheet sheet = PlugSheet.of(
        ReferenceSet.of("Gulls & \"terns\"", List.of(heronNamed("gull").build())), paper);
    assertThat(sheet.html())
        .contains("@page { size: " + (paper == Paper.A4 ? "A4" : "letter") + "; margin: 0 }")
        .contains("<title>Gulls &amp; &quot;terns&quot; to true scale</title>")
        .contains(sheet.pages().get(0))
        .endsWith("</html>\n");
  }
}
