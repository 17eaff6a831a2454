package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SvgWriterTest {

  /** A drawing that writes text too. */
  private static final class Drawing extends SvgWriter {

    void text(String more, String content) {
      textOf(10.0, 20.5, "middle", 3.25, more, content);
    }
  }

  @Test
  void numbers_are_written_in_thousandths_of_a_millimetre() {
    assertThat(SvgWriter.n(0.0)).isEqualTo("0");
    assertThat(SvgWriter.n(-0.0004)).isEqualTo("0");
    assertThat(SvgWriter.n(0.0006)).isEqualTo("0.001");
    assertThat(SvgWriter.n(12.3456)).isEqualTo("12.346");
    assertThat(SvgWriter.n(297.0)).isEqualTo("297");
    assertThat(SvgWriter.n(-25.4)).isEqualTo("-25.4");
  }

  /** XML 1.0, 2.4: these signs have a meaning of their own there. */
  @Test
  void the_signs_of_xml_are_replaced() {
    assertThat(SvgWriter.escaped("a < b & c > \"d\" &lt; e"))
        .isEqualTo("a &lt; b &amp; c &gt; &quot;d&quot; &amp;lt; e");
  }

  @Test
  void a_line_without_a_width_is_not_drawn() {
    Drawing drawing = new Drawing();
    drawing.path("M0 0H10", "grey", "black", 0.0);
    drawing.path("M0 0H10", "none", "black", 0.35);
    assertThat(drawing.svg(20.0, 10.5, "a plug", 3.5, "#222"))
        .isEqualTo("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"20mm\" height=\"10.5mm\""
            + " viewBox=\"0 0 20 10.5\" role=\"img\" aria-label=\"a plug\""
            + " font-family=\"Helvetica, Arial, sans-serif\" font-size=\"3.5\" fill=\"#222\">\n"
            + "<path d=\"M0 0H10\" fill=\"grey\"/>\n"
            + "<path d=\"M0 0H10\" fill=\"none\" stroke=\"black\" stroke-width=\"0.35\""
            + " stroke-linejoin=\"round\"/>\n"
            + "</svg>\n");
  }

  @Test
  void a_text_has_its_place_its_size_and_what_more_is_asked_for() {
    Drawing drawing = new Drawing();
    drawing.text("", "1/4 in");
    drawing.text("font-weight=\"bold\"", "<tspan>x</tspan>");
    assertThat(drawing.svg(1.0, 1.0, "\"<&>\"", 1.0, "black"))
        .contains("aria-label=\"&quot;&lt;&amp;&gt;&quot;\"")
        .endsWith(
            "\n<text x=\"10\" y=\"20.5\" text-anchor=\"middle\" font-size=\"3.25\">1/4 in</text>\n"
                + "<text x=\"10\" y=\"20.5\" text-anchor=\"middle\" font-size=\"3.25\""
                + " font-weight=\"bold\"><tspan>x</tspan></text>\n</svg>\n");
  }
}
