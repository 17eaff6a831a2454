package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.airfit.drawing.ReadingOverlay;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Say;
import org.airfit.lesson.Table;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.BenchPath;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.KnownPiece;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.Outlier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/** Build your shop's own reference set: readings of pieces, mean and scatter, what stands out, the set. */
final class Lesson9 {

  private static final String[] TIPS = {"11.93", "11.96", "11.91", "11.97", "11.94", "11.62"};
  private static final double[] LENGTHS = {16.25, 16.34, 16.29, 16.38, 16.22, 16.31};
  private static final double[] GROOVES = {5.22, 5.15, 5.27, 5.18, 5.21, 5.20};
  private static final double[][] TERNS = {
    {11.89, 16.14, 3.63},
    {11.92, 16.27, 3.55},
    {11.87, 16.19, 3.66},
    {11.93, 16.22, 3.58},
    {11.90, 16.11, 3.61}
  };

  private Lesson9() {}

  static List<Figure> figures() {
    List<Input> inputs = new ArrayList<>();
    for (int i = 0; i < TIPS.length; i++) {
      inputs.add(Input.of(
              "G" + (i + 1),
              "Gannet G" + (i + 1) + ", tip diameter",
              Kind.MILLIMETRES,
              TIPS[i] + " mm",
              11.5,
              12.4,
              0.01)
          .typed(5, 30));
    }
    inputs.add(Input.choice(
        "out", "piece left out of the set", "G6", "G6", "G6: its tip is worn", "", "none"));
    return List.of(new Figure(
        "9-pieces",
        9,
        "Change the readings of the six Gannets",
        inputs,
        "cell-04-0",
        Lesson9::show));
  }

  private static KnownPiece piece(String label, double tip, double length, double groove) {
    Map<Dimension, Length> sizes = new LinkedHashMap<>();
    sizes.put(Dimension.TIP_DIAMETER, Length.ofMillimetres(tip));
    sizes.put(Dimension.TIP_LENGTH, Length.ofMillimetres(length));
    sizes.put(Dimension.GROOVE_WIDTH, Length.ofMillimetres(groove));
    return new KnownPiece(label, sizes);
  }

  private static KnownPlugs gannets(Given given) {
    KnownPlugs known = KnownPlugs.of("gannet", Instrument.DIGITAL_CALIPER);
    for (int i = 0; i < TIPS.length; i++) {
      String label = "G" + (i + 1);
      known = known.with(piece(label, given.number(label), LENGTHS[i], GROOVES[i]));
    }
    return known;
  }

  private static KnownPlugs terns() {
    KnownPlugs known = KnownPlugs.of("tern", Instrument.DIGITAL_CALIPER);
    for (int i = 0; i < TERNS.length; i++) {
      known = known.with(piece("T" + (i + 1), TERNS[i][0], TERNS[i][1], TERNS[i][2]));
    }
    return known;
  }

  private static double[] tips(KnownPlugs known) {
    return known.pieces().stream()
        .mapToDouble(piece -> {
          Length tip = piece.sizes().get(Dimension.TIP_DIAMETER);
          return tip == null ? Double.NaN : tip.millimetres();
        })
        .toArray();
  }

  private static double[] numbers(int n) {
    return IntStream.rangeClosed(1, n).mapToDouble(i -> i).toArray();
  }

  private static void show(Given given, Shown shown) {
    KnownPlugs gannets = gannets(given);
    KnownPlugs terns = terns();
    shown.svg(
        "cell-04-0",
        () -> Plot.of("Tip diameters as measured", "number of the piece", "tip diameter [mm]")
            .points("Gannet", numbers(6), tips(gannets))
            .points("Tern", numbers(5), tips(terns))
            .svg());
    List<String> odd = gannets.outliers().stream().map(Outlier::inWords).toList();
    shown.said("cell-06-0", "Terns that stand out: " + terns.outliers().size());
    shown.html(
        "cell-06-1",
        () -> Say.typeset(odd.isEmpty() ? new Object[] {"No Gannet stands out."} : odd.toArray()));

    KnownPlugs sound = given.has("out") ? gannets.without("G6") : gannets;
    shown.markdown("cell-10-0", () -> spreads(sound, terns));
    shown.said(
        "cell-12-0",
        sound.piecesFor(Dimension.TIP_DIAMETER, mm(0.05), 0.95).inWords(),
        sound.piecesFor(Dimension.GROOVE_WIDTH, mm(0.06), 0.95).inWords(),
        sound.piecesFor(Dimension.TIP_DIAMETER, mm(0.01), 0.95).inWords());

    Source drawer = Source.measured(
        "drawers 1 to 4 of Tern Creek Boatyard, digital caliper 0.01 mm (invented)");
    PlugProfile gannet = sound.toProfile(drawer).displayName("Gannet").build();
    PlugProfile tern = terns.toProfile(drawer).displayName("Tern").build();
    ReferenceSet own = ReferenceSet.of("Tern Creek's own plugs", List.of(gannet, tern));
    shown.said("cell-14-0", own.name() + ": " + own.weakestProvenance());
    shown.html("cell-14-1", () -> apart(own));

    List<PlugReading> readings = List.of(
        reading(Dimension.TIP_DIAMETER, 11.92),
        reading(Dimension.TIP_LENGTH, 16.27),
        reading(Dimension.GROOVE_WIDTH, 5.16));
    Identification answer = Identifier.of(own).identify(readings);
    Identification alone = Identifier.of(own).withoutNearCopies().identify(readings);
    shown.said(
        "cell-16-0",
        answer.verdict().label() + ": " + answer.inWords(),
        "Where no near copies are about: " + alone.verdict().label() + ": " + alone.inWords());
    shown.svg("cell-16-1", () -> ReadingOverlay.of(answer).svg());
    shown.markdown("cell-18-0", () -> answer.working().toMarkdown());
    PartSpread.Sample tip = (PartSpread.Sample) sound.spread(Dimension.TIP_DIAMETER);
    shown.sum(form(
        "Tip of the Gannets in the set: mean %.3f mm, s %.3f mm from %d pieces. %s",
        tip.mean().millimetres(),
        tip.sampleDeviation().millimetres(),
        tip.pieces(),
        odd.isEmpty()
            ? "No piece stands out."
            : odd.size() == 1 ? "One piece stands out." : odd.size() + " pieces stand out."));
  }

  private static Length mm(double millimetres) {
    return Length.ofMillimetres(millimetres);
  }

  private static PlugReading reading(Dimension dimension, double millimetres) {
    return PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(millimetres));
  }

  private static String spreads(KnownPlugs sound, KnownPlugs terns) {
    Table table = Table.of(
        "kind", "dimension", "pieces", "mean [mm]", "s [mm]", "95 of 100 next pieces [mm]");
    for (KnownPlugs known : List.of(sound, terns)) {
      for (Dimension dimension : known.dimensions()) {
        PartSpread.Sample sample = (PartSpread.Sample) known.spread(dimension);
        PartSpread.Limits next = sample.nextPiece(0.95);
        table.row(
            known.profileId(),
            dimension.label(),
            sample.pieces(),
            form("%.3f", sample.mean().millimetres()),
            form("%.3f", sample.sampleDeviation().millimetres()),
            form("%.2f to %.2f", next.low().millimetres(), next.high().millimetres()));
      }
    }
    return table.toMarkdown();
  }

  private static String apart(ReferenceSet own) {
    List<Object> lines = new ArrayList<>();
    for (Separation apart : Separation.within(own, Instrument.DIGITAL_CALIPER)) {
      lines.add(apart.inWords(0.01));
    }
    lines.add(BenchPath.of(Identifier.of(own)).toText());
    return Say.typeset(lines.toArray());
  }
}
