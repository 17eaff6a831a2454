package org.airfit.internal;

/**
 * Collects the elements of an SVG drawing whose unit is the millimetre on paper; each package that draws adds its own
 * marks. Not thread-safe.
 */
public class SvgWriter {

  /** What was written so far, without the element around it. */
  protected final StringBuilder out = new StringBuilder();

  /** Starts an empty drawing. */
  protected SvgWriter() {}

  /**
   * Writes a number with as many decimals as paper can show.
   *
   * @param value the number [mm]
   * @return the number in thousandths, without trailing zeros
   */
  public static String n(double value) {
    return Digits.significant(Math.rint(value * 1000.0) / 1000.0, 7);
  }

  /**
   * Makes a text safe inside XML.
   *
   * @param text the text
   * @return the text with its signs of XML replaced
   */
  public static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /**
   * Draws a path.
   *
   * @param d the path
   * @param fill the colour inside, or "none"
   * @param stroke the colour of the line
   * @param weight the width of the line [mm]; 0 for none
   */
  public void path(String d, String fill, String stroke, double weight) {
    out.append("<path d=\"").append(d).append("\" fill=\"").append(fill).append('"');
    if (weight > 0.0) {
      out.append(" stroke=\"")
          .append(stroke)
          .append("\" stroke-width=\"")
          .append(n(weight))
          .append("\" stroke-linejoin=\"round\"");
    }
    out.append("/>\n");
  }

  /**
   * Writes text.
   *
   * @param x where it is anchored [mm]
   * @param y its base line [mm]
   * @param anchor "start", "middle" or "end"
   * @param size the size of its letters [mm]
   * @param more further attributes, empty for none
   * @param content the text, escaped already, or elements
   */
  protected void textOf(
      double x, double y, String anchor, double size, String more, String content) {
    out.append("<text x=\"")
        .append(n(x))
        .append("\" y=\"")
        .append(n(y))
        .append("\" text-anchor=\"")
        .append(anchor)
        .append("\" font-size=\"")
        .append(n(size))
        .append('"')
        .append(more.isEmpty() ? "" : " " + more)
        .append('>')
        .append(content)
        .append("</text>\n");
  }

  /**
   * Puts the element around what was written.
   *
   * @param width the width on paper [mm]
   * @param height the height on paper [mm]
   * @param label what the drawing shows, for those who cannot see it
   * @param size the size of letters unless said otherwise [mm]
   * @param ink the colour of text unless said otherwise
   * @return the SVG element
   */
  public String svg(double width, double height, String label, double size, String ink) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + n(width) + "mm\" height=\""
        + n(height) + "mm\" viewBox=\"0 0 " + n(width) + " " + n(height)
        + "\" role=\"img\" aria-label=\"" + escaped(label)
        + "\" font-family=\"Helvetica, Arial, sans-serif\" font-size=\"" + n(size) + "\" fill=\""
        + ink + "\">\n" + out + "</svg>\n";
  }
}
