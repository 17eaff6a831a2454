package org.airfit.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class PlugDrawingTest {

  private static final PlugProfile HERON =
      DemoProfiles.birds().profile("demo-heron").orElseThrow();

  private static String attribute(String svg, String name) {
    Matcher found = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(svg);
    assertThat(found.find()).as(name).isTrue();
    return found.group(1);
  }

  @Test
  void one_unit_of_the_drawing_is_one_millimetre_on_paper() {
    PlugDrawing drawing = PlugDrawing.of(HERON);
    String width = attribute(drawing.svg(), "width");
    String height = attribute(drawing.svg(), "height");
    assertThat(width).endsWith("mm");
    assertThat(attribute(drawing.svg(), "viewBox"))
        .isEqualTo("0 0 " + width.replace("mm", "") + " " + height.replace("mm", ""));
    assertThat(drawing.width().millimetres())
        .isCloseTo(Double.parseDouble(width.replace("mm", "")), within(0.005));
    assertThat(drawing.height().millimetres())
        .isCloseTo(Double.parseDouble(height.replace("mm", "")), within(0.005));
    assertThat(drawing.profile()).isSameAs(HERON);
  }

  /** A screen is not printed again: the outline is stretched. All but that sentence is the same drawing. */
  @Test
  void on_a_screen_the_ruler_is_told_of_in_words_for_a_screen() {
    PlugDrawing paper = PlugDrawing.of(HERON);
    PlugDrawing screen = paper.onScreen();
    // a sentence is broken into lines
    assertThat(screen.svg().replaceAll("<[^>]*>|\\s+", " ").replaceAll(" +", " "))
        .contains("this drawing: stretch it until they match.")
        .doesNotContain("print", "sheet");
    assertThat(paper.svg().replaceAll("<[^>]*>|\\s+", " ").replaceAll(" +", " "))
        .contains("this sheet: print again at 100 %")
        .doesNotContain("stretch");
    assertThat(screen.width()).isEqualTo(paper.width());
    assertThat(screen.height()).isEqualTo(paper.height());
    assertThat(screen.svg().replaceAll("<text[^>]*>[^<]*</text>\\s*", ""))
        .isEqualTo(paper.svg().replaceAll("<text[^>]*>[^<]*</text>\\s*", ""));
  }

  @Test
  void the_ruler_is_fifty_millimetres_long() {
    List<Double> ticks = new ArrayList<>();
    Matcher tick = Pattern.compile("M([0-9.]+) ([0-9.]+)v[0-9.]+").matcher(rulerPath());
    while (tick.find()) {
      ticks.add(Double.parseDouble(tick.group(1)));
    }
    assertThat(ticks).hasSize(51);
    for (int i = 0; i <= 50; i++) {
      assertThat(ticks.get(i) - ticks.get(0)).isCloseTo(i, within(1.0e-9));
    }
    assertThat(PlugDrawing.of(HERON).svg()).contains("50 mm");
  }

  /** The path with the ticks: the one with most strokes downward. */
  private static String rulerPath() {
    Matcher path =
        Pattern.compile("d=\"([^\"]*)\"").matcher(PlugDrawing.of(HERON).svg());
    String most = "";
    while (path.find()) {
      String d = path.group(1);
      if (d.chars().filter(c -> c == 'v').count()
          > most.chars().filter(c -> c == 'v').count()) {
        most = d;
      }
    }
    return most;
  }

  @Test
  void every_dimension_is_written_on_it() {
    String svg = PlugDrawing.of(HERON).svg();
    HERON
        .dimensions()
        .forEach((dimension, spread) ->
            assertThat(svg).contains(Digits.fixed(spread.nominal().millimetres(), 2)));
    assertThat(svg).contains("Demo Heron");
  }

  @Test
  void a_profile_that_lacks_a_dimension_is_not_drawn() {
    PlugProfile bare = PlugProfile.builder("bare")
        .from(Provenance.synthetic(), Source.demo("test"))
        .dimension(
            Dimension.BORE, PartSpread.normal(Length.ofMillimetres(6), Length.ofMillimetres(0.1)))
        .build();
    assertThat(PlugDrawing.missing(bare)).hasSize(8).doesNotContain(Dimension.BORE);
    assertThat(PlugDrawing.missing(HERON)).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugDrawing.of(bare))
        .withMessageContaining("missing: tip diameter (D_t)");
  }

  @Test
  void a_name_with_signs_of_xml_in_it_does_not_break_the_drawing() {
    PlugProfile.Builder odd = PlugProfile.builder("odd")
        .displayName("<Odd> & \"quoted\"")
        .from(Provenance.synthetic(), Source.demo("test"));
    HERON.dimensions().forEach(odd::dimension);
    assertThat(PlugDrawing.of(odd.build()).svg())
        .contains("&lt;Odd&gt; &amp; &quot;quoted&quot;")
        .doesNotContain("<Odd>");
  }

  /** Sizes in the order of {@link Dimension}. */
  private static PlugDrawing drawingOf(double... millimetres) {
    PlugProfile.Builder builder = PlugProfile.builder("odd")
        .from(Provenance.synthetic(), Source.demo("test"))
        .confirmUnusual();
    int next = 0;
    for (Dimension dimension : Dimension.values()) {
      builder.dimension(
          dimension,
          PartSpread.normal(Length.ofMillimetres(millimetres[next++]), Length.ofMillimetres(0.04)));
    }
    return PlugDrawing.of(builder.build());
  }

  @Test
  void a_collar_that_is_only_a_ridge_is_drawn_as_a_line_of_its_height() {
    PlugDrawing ridge = drawingOf(20, 24, 8, 18, 3, 17, 8, 22, 9);
    assertThat(ridge.stretches())
        .extracting(PlugDrawing.Stretch::outside)
        .containsExactly(20.0, 24.0, 17.0, 22.0);
    // the axis lies at 34.8 + 12 + 2.5, the tip face at 28
    assertThat(ridge.svg()).contains("L36 39.3 L36 37.3 L36 37.3 L36 40.8");
  }

  @Test
  void a_plug_without_a_shoulder_ends_with_its_groove() {
    PlugDrawing none = drawingOf(20, 23, 11, 15, 4, 17, 7, 23, 9);
    assertThat(none.stretches())
        .extracting(PlugDrawing.Stretch::outside)
        .containsExactly(20.0, 23.0, 17.0);
    assertThat(none.stretches().get(2).to()).isEqualTo(15.0);
  }

  /** A length shorter than its text has the text outside its arrows, on the side where no other stands. */
  @Test
  void short_lengths_are_written_beside_their_arrows() {
    String svg = drawingOf(20, 23, 11, 15, 4, 17, 7, 23, 9).svg();
    assertThat(svg).containsPattern("<text x=\"12\"[^>]*>L<tspan[^>]*>c<"); // 28 − 3 − 13
    assertThat(svg).containsPattern("<text x=\"46\"[^>]*>W<tspan[^>]*>g<"); // 28 + 15 + 3
  }
}
