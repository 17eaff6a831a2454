package org.airfit.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.thread.BsptThread;
import org.airfit.thread.NptThread;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The pictures are the ones that were looked at last. They prove nothing: they notice that a picture has changed.
 *
 * <p>Run this test with {@code -Dpictures.renew=true}, look at every picture that changed, and commit it.
 */
class DrawingRegressionTest {

  private static final Path FOLDER =
      Path.of("src", "test", "resources", "org", "airfit", "drawing");

  private static final ReferenceSet BIRDS = DemoProfiles.birds();

  private static PlugReading read(Dimension dimension, double millimetres) {
    return PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, Length.ofMillimetres(millimetres));
  }

  private static Identification answer(Map<Dimension, Double> millimetres) {
    return Identifier.of(BIRDS)
        .identify(new TreeMap<>(millimetres)
            .entrySet().stream()
                .map(size -> read(size.getKey(), size.getValue()))
                .toList());
  }

  private static Identification plover(double above) {
    Map<Dimension, Double> sizes = new TreeMap<>();
    BIRDS
        .profile("demo-plover")
        .orElseThrow()
        .dimensions()
        .forEach(
            (dimension, spread) -> sizes.put(dimension, spread.nominal().millimetres() + above));
    return answer(sizes);
  }

  private static PlugProfile.Builder heron(String id) {
    PlugProfile.Builder builder =
        PlugProfile.builder(id).from(Provenance.synthetic(), Source.demo("test"));
    BIRDS.profiles().get(0).dimensions().forEach(builder::dimension);
    return builder;
  }

  /** A set whose sheet has all that a sheet can have. */
  private static ReferenceSet odd() {
    PlugProfile bare = PlugProfile.builder("bare <one>")
        .from(Provenance.synthetic(), Source.demo("test"))
        .dimension(
            Dimension.BORE, PartSpread.normal(Length.ofMillimetres(6), Length.ofMillimetres(0.1)))
        .build();
    PlugProfile large = heron("long")
        .dimension(
            Dimension.INSERTION_LENGTH,
            PartSpread.normal(Length.ofMillimetres(70), Length.ofMillimetres(0.1)))
        .confirmUnusual()
        .build();
    PlugProfile huge = heron("huge")
        .dimension(
            Dimension.INSERTION_LENGTH,
            PartSpread.normal(Length.ofMillimetres(130), Length.ofMillimetres(0.1)))
        .confirmUnusual()
        .build();
    return ReferenceSet.of(
        "odd",
        List.of(
            bare,
            huge,
            large,
            heron("flat").grooveForm(GrooveForm.FLAT).build(),
            heron("vee").grooveForm(GrooveForm.VEE).build()));
  }

  /** Each picture is drawn inside its test, not before it. */
  private static final Map<String, Supplier<String>> PICTURES = new TreeMap<>();

  static {
    for (String size : List.of("1/16", "1/4", "1", "2")) {
      NominalThreadSize thread = NominalThreadSize.parse(size);
      String name = size.replace('/', '-');
      PICTURES.put("npt-" + name, () -> ThreadDrawing.of(NptThread.of(thread)).svg());
      PICTURES.put("r-" + name, () -> ThreadDrawing.of(BsptThread.of(thread)).svg());
    }
    for (PlugProfile profile : BIRDS.profiles()) {
      PICTURES.put("plug-" + profile.id(), () -> PlugDrawing.of(profile).svg());
    }
    for (PlugSheet.Paper paper : PlugSheet.Paper.values()) {
      PICTURES.put(
          "sheet-" + paper.name().toLowerCase(Locale.ROOT),
          () -> String.join("\n", PlugSheet.of(BIRDS, paper).pages()));
    }
    PICTURES.put("sheet-odd", () -> PlugSheet.of(odd(), PlugSheet.Paper.A4).html());
    for (double above : new double[] {0.0, 0.04, -0.3}) {
      PICTURES.put(
          "overlay-plover" + above, () -> ReadingOverlay.of(plover(above)).svg());
    }
    PICTURES.put(
        "overlay-doubt",
        () -> ReadingOverlay.of(answer(Map.of(
                Dimension.TIP_DIAMETER, 18.77,
                Dimension.COLLAR_DIAMETER, 23.85,
                Dimension.TIP_LENGTH, 21.05)))
            .svg());
    PICTURES.put(
        "overlay-stranger",
        () -> ReadingOverlay.of(answer(Map.of(
                Dimension.TIP_DIAMETER, 40.0,
                Dimension.COLLAR_DIAMETER, 46.0,
                Dimension.TIP_LENGTH, 21.0,
                Dimension.GROOVE_WIDTH, 2.0)))
            .svg());
  }

  static Set<String> pictures() {
    return PICTURES.keySet();
  }

  private static Path file(String name) {
    return FOLDER.resolve(name + (name.equals("sheet-odd") ? ".html" : ".svg"));
  }

  @ParameterizedTest
  @MethodSource("pictures")
  void a_picture_is_the_one_that_was_looked_at(String name) throws IOException {
    String drawn = Objects.requireNonNull(PICTURES.get(name)).get();
    if (Boolean.getBoolean("pictures.renew")) {
      Files.writeString(file(name), drawn);
    }
    assertThat(drawn).isEqualTo(Files.readString(file(name)));
  }

  @ParameterizedTest
  @MethodSource("pictures")
  void a_sign_that_opens_no_tag_is_escaped(String name) {
    assertThat(Objects.requireNonNull(PICTURES.get(name)).get())
        .doesNotContainPattern("<(?![a-zA-Z/!])")
        .doesNotContainPattern("&(?!amp;|lt;|gt;|quot;|#)");
  }
}
