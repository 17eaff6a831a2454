package org.airfit.drawing;

import static org.airfit.drawing.PlugSvg.FINE;
import static org.airfit.drawing.PlugSvg.INK;
import static org.airfit.drawing.PlugSvg.TEXT;
import static org.airfit.drawing.PlugSvg.escaped;
import static org.airfit.drawing.PlugSvg.fine;
import static org.airfit.drawing.PlugSvg.label;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ObjDoubleConsumer;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;

/**
 * The outlines of a whole reference set to true scale on paper, to hold a plug against, each beside a table with room
 * to write readings in.
 *
 * <p>Every page carries a ruler of 50 mm across and one down: a printer may stretch the two ways differently. Nothing
 * is ever scaled to fit. What cannot be drawn is named on the last page, and by {@link #leftOut()}.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PlugSheet {

  /** Sizes of paper. */
  public enum Paper {
    /** 210 mm × 297 mm, ISO 216. */
    A4("A4", 210.0, 297.0),
    /** 8.5 in × 11 in, ANSI/ASME Y14.1 size A. */
    LETTER("letter", 8.5 * 25.4, 11.0 * 25.4);

    private final String css;
    private final double widthMm;
    private final double heightMm;

    Paper(String css, double widthMm, double heightMm) {
      this.css = css;
      this.widthMm = widthMm;
      this.heightMm = heightMm;
    }

    /** {@return the shorter side} */
    public Length width() {
      return Length.ofMillimetres(widthMm);
    }

    /** {@return the longer side} */
    public Length height() {
      return Length.ofMillimetres(heightMm);
    }
  }

  private static final double MARGIN = 12.0;
  private static final double FIRST = 44.0;
  private static final double FOOT = 26.0;
  private static final double GAP = 4.0;

  /** The ruler that runs down, with its figures. */
  private static final double RULER_WIDTH = 11.0;

  private static final double TABLE_WIDTH = 71.0;
  private static final double TABLE_HEAD = 18.5;
  private static final double TABLE_ROW = 4.8;
  private static final double LINE = PlugSvg.LINE;
  private static final double HALF_OF_ONE_IN_TWENTY = 0.025;

  private final ReferenceSet set;
  private final Paper paper;
  private final Map<PlugProfile, String> leftOut = new LinkedHashMap<>();
  private final List<String> pages = new ArrayList<>();

  private PlugSheet(ReferenceSet set, Paper paper) {
    this.set = set;
    this.paper = paper;
    List<List<Block>> filled = filled(blocks());
    for (List<Block> blocks : filled) {
      pages.add(page(blocks, pages.size() + 1, filled.size()));
    }
  }

  /**
   * Draws a set.
   *
   * @param set the profiles, drawn in their order
   * @param paper what it will be printed on
   * @return the sheet
   */
  public static PlugSheet of(ReferenceSet set, Paper paper) {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(paper, "paper");
    return new PlugSheet(set, paper);
  }

  /** {@return the profiles drawn, and those left out} */
  public ReferenceSet referenceSet() {
    return set;
  }

  /** {@return what it is to be printed on} */
  public Paper paper() {
    return paper;
  }

  /** {@return the profiles that are not drawn, each with the reason in words; empty if all are} */
  public Map<PlugProfile, String> leftOut() {
    return Collections.unmodifiableMap(leftOut);
  }

  /** {@return the pages, one at least, each one SVG element as large as the paper; its units are millimetres} */
  public List<String> pages() {
    return Collections.unmodifiableList(pages);
  }

  /** {@return an HTML page that prints to true scale on this paper} */
  public String html() {
    StringBuilder sheets = new StringBuilder();
    for (int i = 0; i < pages.size(); i++) {
      sheets
          .append("<section class=\"sheet\" tabindex=\"0\" aria-label=\"page ")
          .append(i + 1)
          .append(" of ")
          .append(pages.size())
          .append("\">\n")
          .append(pages.get(i))
          .append("</section>\n");
    }
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>"
        + escaped(set.name())
        + " to true scale</title>\n<style>\n"
        + "@page { size: " + paper.css + "; margin: 0 }\n"
        + "html, body { margin: 0; padding: 0 }\n"
        + "h1, .hint { font: bold 16px/1.3 Helvetica, Arial, sans-serif; margin: 0; padding: 3mm 4mm 0 }\n"
        + ".hint { font-weight: normal; font-size: 14px }\n"
        + "svg { display: block }\n"
        + ".sheet { break-after: page }\n"
        + ".sheet:last-of-type { break-after: auto }\n"
        + "@media print { h1, .hint { display: none } }\n"
        + "@media screen { body { background: #e4e8ea; color: #1d2429 } .sheet { overflow-x: auto; margin: 5mm 0 }"
        + " svg { background: #fff; margin: 0 auto } }\n"
        + "@media screen and (prefers-color-scheme: dark) { body { background: #15191c; color: #e6eaec } }\n"
        + "</style>\n</head>\n<body>\n<main>\n<h1>" + escaped(set.name()) + " to true scale</h1>\n"
        + "<p class=\"hint\">Print at 100 % on " + (paper == Paper.A4 ? "A4" : "Letter")
        + ", not fitted to the paper. On a narrow screen each page moves sideways.</p>\n"
        + sheets + "</main>\n</body>\n</html>\n";
  }

  /** Something as wide as the page that is not torn apart, drawn from a height downward. */
  private record Block(double height, ObjDoubleConsumer<PlugSvg> drawing) {}

  private double room() {
    return paper.heightMm - FIRST - FOOT;
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    for (PlugProfile profile : set.profiles()) {
      Set<Dimension> missing = PlugDrawing.missing(profile);
      if (!missing.isEmpty()) {
        leftOut.put(
            profile,
            "not known: "
                + missing.stream().map(Dimension::label).collect(Collectors.joining(", ")));
        continue;
      }
      Block block = block(PlugDrawing.of(profile));
      if (block.height > room() || figureLeft(profile) < MARGIN) {
        leftOut.put(profile, "too large for this paper");
      } else {
        blocks.add(block);
      }
    }
    leftOut.forEach((profile, reason) -> {
      String sentence = "Not drawn: " + profile.displayName() + ", " + reason + ".";
      double width = paper.widthMm - 2.0 * MARGIN - RULER_WIDTH;
      int lines = Paragraph.lines(sentence, TEXT, width).size();
      blocks.add(
          new Block(LINE * lines, (out, y) -> out.sentence(MARGIN, y + 3.0, width, sentence)));
    });
    return blocks;
  }

  /** Figures end at the ruler that runs down. */
  private double figureLeft(PlugProfile profile) {
    return paper.widthMm - MARGIN - RULER_WIDTH - PlugDrawing.of(profile).figureWidth();
  }

  private Block block(PlugDrawing drawing) {
    PlugProfile profile = drawing.profile();
    double tableHeight = TABLE_HEAD + Dimension.values().length * TABLE_ROW;
    double left = figureLeft(profile);
    if (left >= MARGIN + TABLE_WIDTH) {
      double height = Math.max(tableHeight, drawing.figureHeight()) + GAP;
      return new Block(height, (out, y) -> {
        table(out, profile, y);
        figure(out, drawing, left, y + 0.5 * (height - GAP - drawing.figureHeight()));
        separator(out, y + height - 0.5 * GAP);
      });
    }
    double height = tableHeight + drawing.figureHeight() + 2 * GAP;
    return new Block(height, (out, y) -> {
      table(out, profile, y);
      figure(out, drawing, left, y + tableHeight + GAP);
      separator(out, y + height - 0.5 * GAP);
    });
  }

  private List<List<Block>> filled(List<Block> blocks) {
    List<List<Block>> filled = new ArrayList<>(List.of(new ArrayList<>()));
    double used = 0.0;
    for (Block block : blocks) {
      if (used + block.height > room()) {
        filled.add(new ArrayList<>());
        used = 0.0;
      }
      filled.get(filled.size() - 1).add(block);
      used += block.height;
    }
    return filled;
  }

  private String page(List<Block> blocks, int number, int count) {
    PlugSvg out =
        new PlugSvg(paper.widthMm, paper.heightMm, set.name() + " to true scale, page " + number);
    head(out);
    double y = FIRST;
    for (Block block : blocks) {
      block.drawing.accept(out, y);
      y += block.height;
    }
    foot(out, number, count);
    return out.close();
  }

  private void head(PlugSvg out) {
    double right = paper.widthMm - MARGIN;
    out.text(MARGIN, 17.0, "start", 5.0, "font-weight=\"bold\"", "Lay the plug beside its outline");
    out.text(MARGIN, 22.4, "start", TEXT, "", escaped(set.toString()));
    out.text(
        MARGIN,
        28.4,
        "start",
        TEXT,
        fine(),
        "First lay a steel rule on both 50 mm marks of this page. If one of them differs,");
    out.text(
        MARGIN,
        31.9,
        "start",
        TEXT,
        fine(),
        "do not use the page: print again at 100 %, not fitted to the paper.");
    out.text(
        MARGIN,
        35.4,
        "start",
        TEXT,
        fine(),
        "Outlines are of new plugs at nominal size. Wear only takes metal away.");
    out.rulerAcross(right - 57.0, 15.0);
    out.rule(MARGIN, 39.5, right, 39.5, INK, 0.4);
    out.rulerDown(right, FIRST);
  }

  private void foot(PlugSvg out, int number, int count) {
    double width = paper.widthMm - 2.0 * MARGIN;
    double y = paper.heightMm - FOOT + 4.8;
    y = out.sentence(
        MARGIN,
        y,
        width,
        "usual ±: 19 of 20 new plugs lie within; where a standard gives limits, all that keep to it.");
    y = out.sentence(
        MARGIN,
        y,
        width,
        "Sizes that agree do not prove that two halves mate safely: try them with the pressure off, then raise it"
            + " slowly.");
    out.text(
        paper.widthMm - MARGIN,
        y,
        "end",
        TEXT,
        fine(),
        "scale 1:1, page " + number + " of " + count);
  }

  private void separator(PlugSvg out, double y) {
    out.rule(MARGIN, y, paper.widthMm - MARGIN - RULER_WIDTH - 3.0, y, FINE, 0.1);
  }

  private static void figure(PlugSvg out, PlugDrawing drawing, double left, double y) {
    out.groupAt(left, y - PlugDrawing.HEAD);
    drawing.figure(out);
    out.endGroup();
  }

  private static void table(PlugSvg out, PlugProfile profile, double top) {
    double nominal = MARGIN + 43.0;
    double usual = MARGIN + 55.0;
    double read = MARGIN + 57.0;
    double end = MARGIN + TABLE_WIDTH;
    out.text(
        MARGIN, top + 4.2, "start", 3.8, "font-weight=\"bold\"", escaped(profile.displayName()));
    out.text(
        MARGIN, top + 8.2, "start", TEXT, fine(), escaped(profile.provenance().toString()));
    profile
        .grooveForm()
        .ifPresent(form -> out.text(
            MARGIN,
            top + 12.0,
            "start",
            TEXT,
            fine(),
            "locking groove " + form.label()
                + (form == GrooveForm.FLAT ? "" : "; drawn flat, at its size only")));
    double y = top + TABLE_HEAD - 1.6;
    out.text(MARGIN, y, "start", TEXT, fine(), "mm");
    out.text(nominal, y, "end", TEXT, fine(), "nominal");
    out.text(usual, y, "end", TEXT, fine(), "usual ±");
    out.text(read + 1.0, y, "start", TEXT, fine(), "as read");
    y = top + TABLE_HEAD;
    out.rule(MARGIN, y, end, y, FINE, 0.25);
    for (Dimension dimension : Dimension.values()) {
      PartSpread spread = profile.spread(dimension).orElseThrow();
      y += TABLE_ROW;
      out.text(MARGIN, y - 1.4, "start", TEXT, "", label(dimension, dimension.label()));
      out.text(nominal, y - 1.4, "end", TEXT, "", Digits.fixed(spread.nominal().millimetres(), 2));
      out.text(usual, y - 1.4, "end", TEXT, fine(), Digits.fixed(usualMm(spread), 2));
      out.rule(MARGIN, y, end, y, FINE, 0.1);
    }
    out.rule(read, top + TABLE_HEAD, read, y, FINE, 0.1);
    out.rule(end, top + TABLE_HEAD, end, y, FINE, 0.1);
  }

  /** How far from the nominal 19 of 20 new plugs lie at most; all of them where limits are given. */
  static double usualMm(PartSpread spread) {
    if (spread instanceof PartSpread.Limits limits) {
      return 0.5 * limits.high().minus(limits.low()).millimetres();
    }
    double score = spread instanceof PartSpread.Sample sample
        ? Statistics.studentScore(HALF_OF_ONE_IN_TWENTY, sample.degreesOfFreedom())
        : Statistics.normalScore(HALF_OF_ONE_IN_TWENTY);
    return score * spread.standardDeviation().millimetres();
  }
}
