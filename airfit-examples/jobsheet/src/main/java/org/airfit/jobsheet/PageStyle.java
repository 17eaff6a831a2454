package org.airfit.jobsheet;

/** How all pages look: black on white on paper, after the reader's wish on a screen, one column on a telephone. */
final class PageStyle {

  private PageStyle() {}

  /** What the charts of pressure have; the colours are those of the page. */
  static final String CHART = """
      svg .ink { fill: var(--ink); } svg .soft { fill: var(--soft); } svg .warn { fill: var(--warn); }
      svg .run { fill: var(--run); } svg .bar { stroke: var(--run); } svg .hair { stroke: var(--hair); }
      svg .need { stroke: var(--warn); }
      figure.chart text { paint-order: stroke; stroke: var(--paper); stroke-width: 3px; stroke-linejoin: round; }
      """;

  /** What every page has. */
  private static final String ALL = """
      :root { --ink: #111417; --soft: #454d53; --line: #111417; --hair: #b9c0c4; --paper: #fff; --tint: #f1f3f4;
        --warn: #8a1c1c; --run: #1d4e6b; color-scheme: light; }
      @media screen and (prefers-color-scheme: dark) {
        :root { --ink: #eceff1; --soft: #b7c0c6; --line: #cfd6da; --hair: #4a545a; --paper: #14181b; --tint: #20272b;
          --warn: #ff9d94; --run: #7fc4ea; color-scheme: dark; } }
      * { box-sizing: border-box; }
      html { -webkit-text-size-adjust: 100%; }
      body { font: 16px/1.45 Arial, Helvetica, "Liberation Sans", "DejaVu Sans Condensed", sans-serif;
        color: var(--ink); background: var(--paper); margin: 0; overflow-wrap: break-word; }
      main, .top, .bottom { max-width: 190mm; margin: 0 auto; padding: 0 16px; }
      .top { padding-top: 16px; }
      .bottom { padding-bottom: 24px; font-size: 14px; color: var(--soft); }
      h1 { font-size: 24px; line-height: 1.2; margin: 0 0 4px; }
      h2 { font-size: 18px; line-height: 1.25; margin: 20px 0 6px; break-after: avoid; }
      h3 { font-size: 16px; margin: 12px 0 4px; break-after: avoid; }
      p { margin: 0 0 8px; }
      a { color: inherit; }
      ul, ol { margin: 0 0 8px; padding-left: 22px; }
      li { margin-bottom: 3px; }
      sub { font-size: .85em; line-height: 0; }
      .soft { color: var(--soft); }
      .id { white-space: nowrap; }
      .warn, .unmet { font-weight: bold; }
      table { border-collapse: collapse; width: 100%; margin: 0 0 8px; }
      caption { text-align: left; color: var(--soft); padding-bottom: 2px; }
      th, td { text-align: left; vertical-align: top; padding: 4px 10px 4px 0; border-bottom: 1px solid var(--hair); }
      thead th { border-bottom: 1.5px solid var(--line); vertical-align: bottom; }
      tbody th { font-weight: normal; }
      tr.unmet th, tr.unmet td { font-weight: bold; }
      tfoot th, tfoot td { font-weight: bold; border-bottom: 0; border-top: 1.5px solid var(--line); }
      td.n, th.n { text-align: right; white-space: nowrap; padding-left: 8px; padding-right: 0; }
      tr, figure, li, dd, .keep { break-inside: avoid; }
      .care, .care p { break-inside: avoid; }
      .care { box-decoration-break: clone; -webkit-box-decoration-break: clone; }
      dl.facts { display: grid; grid-template-columns: 9em 1fr; gap: 3px 14px; margin: 0 0 8px; }
      dl.facts dt { font-weight: bold; }
      dl.facts dd { margin: 0; }
      .wide { overflow-x: auto; }
      figure { margin: 0 0 12px; }
      figcaption { color: var(--soft); font-size: 14px; }
      figure.scale { overflow-x: auto; }
      figure.scale svg { display: block; background: #fff; }
      figure.chart svg { display: block; width: 100%; height: auto; }
      """ + CHART + """
      .narrow { display: none; }
      pre { font: 13px/1.45 "DejaVu Sans Mono", Menlo, Consolas, monospace; margin: 0 0 12px; white-space: pre-wrap;
        overflow-wrap: anywhere; }
      .l, .step { display: block; }
      .l { text-indent: -4ch; }
      .l.h { break-after: avoid; }
      .step { break-inside: avoid; }
      @media screen and (max-width: 700px) {
        dl.facts { grid-template-columns: 1fr; gap: 0; }
        dl.facts dd { margin-bottom: 6px; }
        .narrow { display: block; } .roomy { display: none; }
      }
      @media print {
        .screen { display: none; }
        body { font-size: 9.5pt; line-height: 1.32; }
        main, .top, .bottom { max-width: none; padding: 0 .3mm; }
        h1 { font-size: 15pt; } h2 { font-size: 11.5pt; margin: 4mm 0 1mm; }
        h3 { font-size: 10pt; margin: 2.5mm 0 .5mm; }
        p, ul, ol, dl.facts, table { margin-bottom: 1.5mm; }
        th, td { padding-top: .6mm; padding-bottom: .6mm; }
        figcaption, caption, .bottom { font-size: 8.5pt; }
        pre { font-size: 7.5pt; line-height: 1.35; }
        sub { font-size: max(.85em, 7pt); }
        p { orphans: 2; widows: 2; }
        table:not(:has(tbody tr:nth-child(9))) { break-inside: avoid; }
      }
      """;

  /** The style of a page whose printed sides carry a footer: what it is, and side n of m. */
  static String of(String footer, String more) {
    String quoted = quoted(footer);
    return "@page { margin: 10mm 12mm 13mm;\n"
        + "  @bottom-left { content: " + quoted
        + "; font: 8pt Arial, Helvetica, \"DejaVu Sans Condensed\", sans-serif; }\n"
        + "  @bottom-right { content: \"page \" counter(page) \" of \" counter(pages);"
        + " font: 8pt Arial, Helvetica, \"DejaVu Sans Condensed\", sans-serif; } }\n"
        + ALL + more;
  }

  /** A text inside a style sheet: every sign that is no letter, digit or blank by its code. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    text.codePoints().forEach(sign -> {
      boolean plain = (sign >= 'a' && sign <= 'z')
          || (sign >= 'A' && sign <= 'Z')
          || (sign >= '0' && sign <= '9')
          || sign == ' '
          || sign == ',';
      if (plain) {
        out.appendCodePoint(sign);
      } else {
        out.append('\\').append(Integer.toHexString(sign)).append(' ');
      }
    });
    return out.append('"').toString();
  }
}
