package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class PlotTest {

  @Test
  void a_plot_names_its_axes_and_series() {
    String svg = Plot.of("Drop & flow", "flow [scfm]", "drop [psi]")
        .curve("square", 0.0, 100.0, x -> x * x / 1000.0)
        .points("handbook", new double[] {50.0}, new double[] {2.5})
        .level("allowed", 5.0)
        .fromZero()
        .svg();
    assertThat(svg)
        .contains("Drop &amp; flow", "flow [scfm]", "drop [psi]", "square", "handbook", "allowed");
    assertThat(svg).doesNotContain("NaN");
  }

  @Test
  void lines_differ_by_their_dash() {
    double[] x = {0.0, 1.0};
    String svg = Plot.of("t", "x", "y")
        .line("one", x, x)
        .line("two", x, new double[] {1.0, 2.0})
        .svg();
    assertThat(svg).contains("stroke-dasharray=\"8 4\"");
  }

  @Test
  void a_single_point_has_room_around_it() {
    assertThat(Plot.of("t", "x", "y")
            .points("one", new double[] {3.0}, new double[] {4.0})
            .svg())
        .doesNotContain("NaN");
  }

  @Test
  void what_cannot_be_drawn_is_refused() {
    Plot plot = Plot.of("t", "x", "y");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plot.line("one", new double[2], new double[3]));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plot.line("one", new double[] {Double.NaN}, new double[] {1.0}))
        .withMessageContaining("finite");
    assertThatIllegalArgumentException().isThrownBy(() -> Bars.of("t", "psi", 1).bar("one", -1.0));
  }

  @Test
  void bars_carry_their_numbers() {
    assertThat(Bars.of("Where it goes", "psi", 1)
            .bar("hose", 4.25)
            .bar("coupling", 0.0)
            .svg())
        .contains("Where it goes [psi]", "hose", ">4.3<", ">0.0<");
  }

  @Test
  void what_has_no_amount_is_told_in_words() {
    String bars =
        Bars.of("Loss", "psi", 1).bar("wide", 2.0).none("thin", "choked").svg();
    assertThat(bars)
        .contains("aria-label=\"Loss [psi]: wide 2.0; thin choked.\"", ">choked</text>");
  }
}
