package org.airfit.files;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.GaugeBall;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.UniversalSocket;
import org.airfit.quantity.Length;
import org.airfit.quantity.NearWord;
import org.airfit.safety.Medium;
import org.airfit.source.Basis;
import org.airfit.source.Source;

/** The fields of a plug profile, alike in a catalogue and in a set file, as JSON and as a row of a table. */
final class ProfileFields {

  private static final List<Basis> BASES = List.of(Basis.values());

  private ProfileFields() {}

  static PlugProfile profile(Field item, boolean basisToo, PieceReadings readings)
      throws WrongFileException {
    PlugProfile.Builder builder = head(item, basisToo);
    Field sizes = item.field("dimensions", "an object with a field for each dimension");
    for (String label : sizes.names()) {
      Dimension dimension = dimension(sizes, label);
      Field size = sizes.field(label, "a spread");
      builder.dimension(dimension, spread(size, dimension, readings));
      size.requireNothingElse();
    }
    item.requireNothingElse();
    return item.build(builder::build);
  }

  /** Everything but the dimensions. */
  static PlugProfile.Builder head(Field item, boolean basisToo) throws WrongFileException {
    String id = item.field("id", "a short name, unique in the set").text();
    PlugProfile.Builder builder = item.build(() -> PlugProfile.builder(id));
    builder.displayName(item.field("name", "the name for people").text());
    Optional<Field> letters = item.find("letters", "[\"T\", \"TT\"]");
    if (letters.isPresent()) {
      builder.aliases(letters.get().words().toArray(new String[0]));
    }
    Optional<Field> groove = item.find("grooveForm");
    if (groove.isPresent()) {
      builder.grooveForm(groove.get().oneOf(List.of(GrooveForm.values()), GrooveForm::label));
    }
    Optional<Field> ball = item.find("ball");
    if (ball.isPresent()) {
      Length diameter = ball.get().as(Length::parse);
      builder.tipLengthBy(ball.get().build(() -> new GaugeBall(diameter)));
    }
    if (item.flag("confirmed")) {
      builder.confirmUnusual();
    }
    Optional<Field> deciding = item.find("deciding", "[\"tip diameter\", \"groove width\"]");
    if (deciding.isPresent()) {
      Set<Dimension> decide = new LinkedHashSet<>();
      for (String label : deciding.get().words()) {
        decide.add(dimension(deciding.get(), label));
      }
      deciding.get().build(() -> builder.deciding(decide));
    }
    Optional<Field> medium = item.find("medium");
    if (medium.isPresent()) {
      builder.medium(medium.get().oneOf(List.of(Medium.values()), Medium::toString));
    }
    Provenance provenance = provenance(item);
    return builder.from(provenance, source(item, basisToo, usualBasis(provenance.kind())));
  }

  private static Basis usualBasis(Provenance.Kind kind) {
    return switch (kind) {
      case STANDARD_ENTERED -> Basis.STANDARD;
      case USER_MEASURED -> Basis.MEASURED;
      case NOMINAL_UNVERIFIED -> Basis.FROM_MEMORY;
      case SYNTHETIC -> Basis.DEMO;
    };
  }

  private static Provenance provenance(Field item) throws WrongFileException {
    Provenance.Kind kind = item.field("from", "standard, measured, unverified or invented")
        .oneOf(List.of(Provenance.Kind.values()), ProfileFields::from);
    if (kind != Provenance.Kind.USER_MEASURED) {
      return new Provenance(kind, 0);
    }
    Field pieces = item.field("pieces", "how many known plugs were measured, such as 5");
    int count = pieces.wholeNumber();
    return pieces.build(() -> Provenance.userMeasured(count));
  }

  static Source source(Field item, boolean basisToo, Basis usual) throws WrongFileException {
    String place = item.field("source", "where the sizes come from, in words").text();
    Optional<Field> basis = basisToo
        ? Optional.of(item.field("basis", "one of " + String.join("; ", basisWords())))
        : item.find("basis");
    Basis kind = basis.isPresent() ? basis.get().oneOf(BASES, Basis::label) : usual;
    return item.build(() -> new Source(kind, place));
  }

  /** A universal socket of a set. */
  static UniversalSocket socket(Field item) throws WrongFileException {
    String name = item.field("name", "what to call the socket").text();
    Set<String> takes = new LinkedHashSet<>(
        item.field("takes", "the ids of the profiles it takes, two at least").words());
    Source source = source(item, true, Basis.FROM_MEMORY);
    return item.build(() -> new UniversalSocket(name, takes, source));
  }

  private static List<String> basisWords() {
    return BASES.stream().map(Basis::label).toList();
  }

  static String from(Provenance.Kind kind) {
    return switch (kind) {
      case STANDARD_ENTERED -> "standard";
      case USER_MEASURED -> "measured";
      case NOMINAL_UNVERIFIED -> "unverified";
      case SYNTHETIC -> "invented";
    };
  }

  /** Finds a dimension by its words, such as "tip diameter". */
  static Dimension dimension(Field owner, String label) throws WrongFileException {
    for (Dimension dimension : Dimension.values()) {
      if (dimension.label().equalsIgnoreCase(label.strip())) {
        return dimension;
      }
    }
    List<String> labels =
        List.of(Dimension.values()).stream().map(Dimension::label).toList();
    throw owner.wrong("\"" + label + "\" is no dimension of a plug" + NearWord.named(label, labels)
        + "; accepted: " + String.join(", ", labels));
  }

  static PartSpread spread(Field field, Dimension dimension, PieceReadings kept)
      throws WrongFileException {
    Optional<Field> nominal = field.find("nominal");
    Optional<Field> low = field.find("low");
    Optional<Field> mean = field.find("mean");
    Optional<Field> readings = field.find("readings");
    int ways = (nominal.isPresent() ? 1 : 0)
        + (low.isPresent() ? 1 : 0)
        + (mean.isPresent() ? 1 : 0)
        + (readings.isPresent() ? 1 : 0);
    if (ways != 1) {
      throw field.wrong((ways == 0 ? "holds no size" : "holds the size more than once")
          + "; accepted: nominal and deviation, low and high, count, mean and deviation, or"
          + " readings");
    }
    if (nominal.isPresent()) {
      Length middle = nominal.get().as(Length::parse);
      Length deviation = deviation(field, "from plug to plug");
      return field.build(() -> PartSpread.normal(middle, deviation));
    }
    if (low.isPresent()) {
      Length least = low.get().as(Length::parse);
      Length most = field.field("high", Accepted.LENGTH).as(Length::parse);
      return field.build(() -> PartSpread.limits(least, most));
    }
    if (mean.isPresent()) {
      Length middle = mean.get().as(Length::parse);
      int count =
          field.field("count", "how many pieces the mean is of, such as 5").wholeNumber();
      Length deviation = deviation(field, "of the pieces, with n − 1");
      return field.build(() -> new PartSpread.Sample(count, middle, deviation));
    }
    return kept.keep(readings.get(), dimension);
  }

  private static Length deviation(Field field, String of) throws WrongFileException {
    return field
        .field("deviation", "the standard deviation " + of + ", such as \"0.03 mm\"")
        .as(Length::parse);
  }

  /** The fields of {@link #head} as they are written; empty ones are left out. */
  static Map<String, String> headOf(PlugProfile profile) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("id", profile.id());
    fields.put("name", profile.displayName());
    profile.grooveForm().ifPresent(form -> fields.put("grooveForm", form.label()));
    profile.tipLengthBall().ifPresent(ball -> fields.put("ball", text(ball.diameter())));
    fields.put("from", from(profile.provenance().kind()));
    fields.put("source", profile.source().citation());
    fields.put("basis", profile.source().basis().label());
    return fields;
  }

  /** The dimensions that a profile was told to be decided by, as they are written; none where all decide. */
  static List<String> deciding(PlugProfile profile) {
    Set<Dimension> known = profile.dimensions().keySet();
    boolean isTold = !profile.decidingDimensions().equals(known)
        || (profile.missingDimensions().isEmpty() && known.size() < Dimension.values().length);
    return isTold
        ? profile.decidingDimensions().stream().map(Dimension::label).toList()
        : List.of();
  }

  /** The fields of {@link #spread} as they are written; the count is left to the caller. */
  static Map<String, String> fieldsOf(PartSpread spread) {
    Map<String, String> fields = new LinkedHashMap<>();
    if (spread instanceof PartSpread.Limits limits) {
      fields.put("low", text(limits.low()));
      fields.put("high", text(limits.high()));
    } else if (spread instanceof PartSpread.Sample sample) {
      fields.put("mean", text(sample.mean()));
      fields.put("deviation", text(sample.sampleDeviation()));
    } else {
      fields.put("nominal", text(spread.nominal()));
      fields.put("deviation", text(spread.standardDeviation()));
    }
    return fields;
  }

  /** Whether the sizes are refused unless they are confirmed. */
  static boolean needsConfirming(PlugProfile profile) {
    PlugProfile.Builder again = PlugProfile.builder(profile.id())
        .displayName(profile.displayName())
        .aliases(profile.aliases().toArray(new String[0]))
        .from(profile.provenance(), profile.source());
    profile.tipLengthBall().ifPresent(again::tipLengthBy);
    profile.dimensions().forEach(again::dimension);
    return !again.findings().isEmpty();
  }

  /** The fewest digits in millimetres that read back as the very same length, two behind the point at least. */
  static String text(Length length) {
    BigDecimal exact = new BigDecimal(length.millimetres());
    for (int digits = 1; digits <= 17; digits++) {
      BigDecimal rounded = exact.round(new MathContext(digits));
      String text = rounded.setScale(Math.max(2, rounded.scale())).toPlainString() + " mm";
      if (Length.parse(text).equals(length)) {
        return text;
      }
    }
    return new BigDecimal(length.metres()).toPlainString() + " m";
  }
}
