package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What nobody should type, and somebody does: one clear line or a clean answer, in 512 MB, and no file is lost. */
class NastyInputsTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");
  private static final Path WORKSHOP = Path.of("..", "sets", "workshop.csv");
  private static final Path RING = Path.of("..", "networks", "ferry-lane-ring.csv");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path job = Path.of("");
  private Path catalogue = Path.of("");

  @BeforeEach
  void copy_the_boat_yard() throws IOException {
    job = copied(YARD.resolve("weak-sander.json"));
    catalogue = copied(YARD.resolve("catalogue.json"));
  }

  private Path copied(Path file) throws IOException {
    return Files.copy(file, folder.resolve(file.getFileName().toString()));
  }

  private int run(Object... args) {
    out.reset();
    err.reset();
    return Main.run(
        Stream.of(args).map(String::valueOf).toArray(String[]::new),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private void refused(String... parts) {
    assertThat(complained().strip()).contains(parts).doesNotContain("\n");
    assertThat(printed()).isEmpty();
  }

  private Path with(String name, Path of, String from, String to) throws IOException {
    String text = Files.readString(of);
    assertThat(text).contains(from);
    return Files.writeString(folder.resolve(name), text.replace(from, to));
  }

  @Test
  void an_atmosphere_nobody_works_in_is_refused() throws IOException {
    for (String around : List.of("0 bar(a)", "0.2999 bar(a)", "5.01 bar(a)", "101.3 bar(a)")) {
      Path odd = with("odd.json", job, "\"1.013 bar(a)\"", "\"" + around + "\"");
      err.reset();
      assertThat(run(odd, folder.resolve("p.html"))).as(around).isEqualTo(2);
      refused("supply.atmosphere", "must be in [0.3, 5.0] bar(a), was " + around, "check the unit");
    }
    for (String around : List.of("0.3 bar(a)", "5 bar(a)")) {
      Path allowed = with("allowed.json", job, "\"1.013 bar(a)\"", "\"" + around + "\"");
      assertThat(run(allowed, folder.resolve("p.html"))).as(around).isZero();
    }
  }

  @Test
  void pressures_below_the_atmosphere_are_refused_in_a_unit_people_read() throws IOException {
    Path limit = with("limit.json", job, "\"notAbove\": \"110 psig\"", "\"notAbove\": \"-3 psig\"");
    assertThat(run(limit, folder.resolve("p.html"))).isEqualTo(2);
    refused("tool.notAbove", "must be above 0 bar(g), was -3 psig");
    err.reset();
    Path supply = with("supply.json", job, "\"8.5 bar(g)\"", "\"-1e6 bar(g)\"");
    assertThat(run(supply, folder.resolve("p.html"))).isEqualTo(2);
    refused("supply.pressure: ", "\"-1e6 bar(g)\"", "must be in [-5, 3000] bar(g)");
    err.reset();
    Path vacuum = with("vacuum.json", job, "\"8.5 bar(g)\"", "\"-4 bar(g)\"");
    assertThat(run(vacuum, folder.resolve("p.html"))).isEqualTo(2);
    refused("supply: ", "was -4 bar(g)");
  }

  @Test
  void the_page_is_never_written_over_what_was_read() throws IOException {
    String before = Files.readString(job);
    String shop = Files.readString(catalogue);
    List<Path> same = new ArrayList<>(List.of(
        job,
        catalogue,
        folder.resolve(".").resolve(job.getFileName()),
        folder.resolve("x").resolve("..").resolve(catalogue.getFileName()),
        Path.of("").toAbsolutePath().relativize(job.toAbsolutePath())));
    Files.createDirectory(folder.resolve("x"));
    same.add(Files.createSymbolicLink(folder.resolve("link.html"), job.toAbsolutePath()));
    same.add(Files.createSymbolicLink(folder.resolve("yard"), folder.toAbsolutePath())
        .resolve("catalogue.json"));
    same.add(Files.createLink(folder.resolve("hard.html"), catalogue));
    Path capitals = folder.resolve("CATALOGUE.JSON");
    if (Files.exists(capitals)) { // where capitals make no other file
      same.add(capitals);
    }
    for (Path page : same) {
      assertThat(run(job, page)).as("%s", page).isEqualTo(2);
      refused("is read for this, and is not written over");
    }
    Path refused =
        with("gas.json", job, "\"conditions\": {", "\"conditions\": {\"medium\": \"oxygen\",");
    for (Path page : List.of(refused, catalogue)) {
      assertThat(run(refused, page)).as("%s", page).isEqualTo(2);
      refused("is read for this, and is not written over");
    }
    assertThat(Files.readString(job)).isEqualTo(before);
    assertThat(Files.readString(catalogue)).isEqualTo(shop);
    assertThat(run(job, folder.resolve("page.html"))).isZero();
  }

  @Test
  void the_set_a_catalogue_names_is_not_written_over_either() throws IOException {
    Path set = copied(WORKSHOP);
    String text = Files.readString(catalogue);
    int from = text.indexOf("\"profiles\"");
    int to = text.indexOf("\"parts\"");
    Files.writeString(
        catalogue,
        text.substring(0, from) + "\"profileSet\": \"workshop.csv\", " + text.substring(to));
    String before = Files.readString(set);
    run(job, set);
    refused("workshop.csv", "not written over");
    assertThat(Files.readString(set)).isEqualTo(before);
    assertThat(run("set", set, set)).isEqualTo(2);
    refused("not written over");
    Path ring = copied(RING);
    assertThat(run("network", ring, ring)).isEqualTo(2);
    refused("not written over");
    assertThat(Files.readString(ring)).isEqualTo(Files.readString(RING));
  }

  @Test
  void a_new_page_gets_the_rights_of_new_files_and_an_old_one_keeps_its_own() throws Exception {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    Path other = Files.writeString(folder.resolve("other.txt"), "as any program writes it");
    Path page = folder.resolve("page.html");
    assertThat(run(job, page)).isZero();
    assertThat(Files.getPosixFilePermissions(page)).isEqualTo(Files.getPosixFilePermissions(other));
    Files.setPosixFilePermissions(page, PosixFilePermissions.fromString("rw-r-----"));
    assertThat(run(job, page)).isZero();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(page)))
        .isEqualTo("rw-r-----");
    Path link = Files.createSymbolicLink(folder.resolve("latest.html"), page.toAbsolutePath());
    Files.writeString(page, "old");
    assertThat(run(job, link)).isZero();
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(page)).startsWith("<!doctype html>");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(Path::toString)).noneMatch(name -> name.endsWith(".part"));
    }
  }

  /** Reading a pipe or a device would hang for ever: the limit ends that, and is far from what this takes. */
  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES)
  void folders_devices_and_pipes_are_refused_to_read_and_to_write() throws Exception {
    List<Path> odd = new ArrayList<>(List.of(folder));
    if (Files.exists(Path.of("/dev/zero"))) {
      odd.add(Files.createSymbolicLink(folder.resolve("zero.csv"), Path.of("/dev/zero")));
      Path pipe = folder.resolve("pipe.json");
      assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0);
      odd.add(pipe);
    }
    for (Path path : odd) {
      String kind = Files.isDirectory(path) ? "it is a folder" : "it is no ordinary file";
      for (Object[] call : new Object[][] {
        {path}, {"set", path}, {"network", path}, {job, path}, {"network", RING, path}
      }) {
        assertThat(run(call)).isEqualTo(2);
        refused(path.toString(), kind);
      }
      with(
          "odd.json",
          job,
          "catalogue.json",
          path.getFileName().toString().replace(folder.getFileName().toString(), "."));
      assertThat(run(folder.resolve("odd.json"))).isEqualTo(2);
      refused(kind);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\0b.json", "\0", ""})
  void a_path_that_is_none_is_told(String path) {
    for (Object[] call : new Object[][] {{path}, {"set", path}, {"network", path}, {job, path}}) {
      assertThat(run(call)).isEqualTo(2);
      assertThat(complained().strip()).doesNotContain("\n", "\0");
      assertThat(printed()).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1e6 bar(g)",
        "1000000 bar(g)",
        "1e300 bar(g)",
        "20000 bar(g)",
        "-1e6 bar(g)",
        "NaN bar(g)"
      })
  void no_pressure_is_too_much_for_the_sheet(String pressure) throws IOException {
    Path high = with("high.json", job, "\"7.4 bar(g)\"", "\"" + pressure + "\"");
    Files.writeString(high, Files.readString(high).replace("8.5 bar(g)", pressure));
    Path page = folder.resolve("high.html");
    int code = run(high, page);
    if (code == 0) {
      assertThat(printed()).contains("JOB SHEET").doesNotContain("NaN", "Infinity");
      assertThat(Files.size(page)).isLessThan(300_000);
    } else {
      refused("high.json: supply");
    }
  }

  @Test
  void a_byte_order_mark_is_no_matter() throws IOException {
    for (Path file : List.of(job, catalogue, copied(WORKSHOP), copied(RING))) {
      Files.writeString(file, "\ufeff" + Files.readString(file));
    }
    assertThat(run(job, folder.resolve("page.html"))).isZero();
    assertThat(run("set", folder.resolve("workshop.csv"))).isZero();
    assertThat(run("network", folder.resolve("ferry-lane-ring.csv"), folder.resolve("n.html")))
        .isZero();
    Path mark = Files.writeString(folder.resolve("mark.json"), "\ufeff");
    assertThat(run(mark)).isEqualTo(2);
    refused("is empty");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\\u001b[31m", "\\u0007", "\\u009b2J", "\\u202e", "\\u0000", "\\ud800"})
  void signs_that_steer_a_terminal_are_refused_and_shown_as_their_code(String sign)
      throws IOException {
    Path odd = with("odd.json", job, "Tern Creek", "Tern" + sign + " Creek");
    assertThat(run(odd, folder.resolve("odd.html"))).isEqualTo(2);
    refused("odd.json: customer", "\\u" + sign.substring(2, 6).toUpperCase(java.util.Locale.ROOT));
    assertThat(complained()).matches("[^\\p{Cntrl}\u202e\ud800]*\\R");
    Path field = with("field.json", job, "\"customer\"", "\"cust" + sign + "omer\"");
    assertThat(run(field, folder.resolve("odd.html"))).isEqualTo(2);
    assertThat(complained().strip()).matches("[^\\p{Cntrl}\u202e]*");
    assertThat(folder.resolve("odd.html")).doesNotExist();
  }

  @Test
  void escape_codes_in_tables_and_on_the_command_line_are_harmless() throws IOException {
    Path set = with("set.csv", WORKSHOP, "Tern", "Te\u001b[31mrn");
    assertThat(run("set", set)).isEqualTo(2);
    refused("set.csv: row 3, column name", "\\u001B");
    Path ring = with("ring.csv", RING, "supply", "sup\u001b[31mply");
    assertThat(run("network", ring, folder.resolve("r.html"))).isEqualTo(2);
    refused("\\u001B");
    assertThat(run("no\u001b[31mfile.json")).isEqualTo(2);
    refused("no\\u001B[31mfile.json: there is no such file");
    Path page = folder.resolve("p\u001b[31m.html");
    assertThat(run(job, page)).isZero();
    assertThat(printed()).contains("p\\u001B[31m.html").doesNotContain("\u001b");
    assertThat(run("set", WORKSHOP, folder.resolve("s\u001b.csv"))).isZero();
    assertThat(printed()).contains("Written: ").doesNotContain("\u001b");
  }

  @Test
  void a_line_end_in_a_name_makes_no_line_of_its_own() throws IOException {
    Path odd = with("odd.json", job, "Tern Creek", "Tern\\nSAFE TO USE\\tCreek");
    assertThat(run(odd, folder.resolve("odd.html"))).isZero();
    assertThat(printed()).contains("for Tern SAFE TO USE Creek");
  }

  @ParameterizedTest
  @ValueSource(strings = {"\\u200b", "\\u00ad", "\\u2060", "\\udb40\\udc41"})
  void a_sign_that_shows_nothing_is_no_name(String sign) throws IOException {
    Path odd = with("odd.json", job, "Tern Creek", "Tern" + sign + " Creek");
    assertThat(run(odd, folder.resolve("odd.html"))).isEqualTo(2);
    refused("odd.json: customer", "which shows nothing");
  }

  @Test
  void two_pipes_or_parts_of_one_name_are_one_line() throws IOException {
    String text = Files.readString(job);
    int from = text.indexOf('{', text.indexOf("\"set\""));
    int to = text.indexOf('}', from) + 1;
    String pipe = text.substring(from, to);
    Path twice = with("twice.json", job, pipe, pipe + ", " + pipe);
    assertThat(run(twice, folder.resolve("p.html"))).isEqualTo(2);
    refused(
        "twice.json: line[3].name: \"3/4 in steel pipe along the slip\" is the name of line[2]");
    Path now = with(
        "now.json",
        job,
        "{\"name\": \"coupling at the tool\"",
        "{\"name\": \"coupling at the outlet\"");
    assertThat(run(now, folder.resolve("p.html"))).isEqualTo(2);
    refused("now.json: now[3]: name of an element must differ");
  }

  @Test
  void what_is_no_json_is_told_without_the_settings_of_a_library() throws IOException {
    for (String text :
        List.of("{\"a\": NaN}", "{\"a\": " + "9".repeat(5_000) + "}", "{\"a\":".repeat(3_000))) {
      assertThat(run(Files.writeString(folder.resolve("no.json"), text))).isEqualTo(2);
      refused("no.json", "is not JSON");
      assertThat(complained()).doesNotContain("JsonReadFeature", "StreamReadConstraints", "enable");
    }
  }

  @Test
  void a_table_whose_lines_end_in_carriage_returns_alone_is_read() throws IOException {
    Path old = Files.writeString(
        folder.resolve("old.csv"), Files.readString(WORKSHOP).replaceAll("\r?\n", "\r"));
    assertThat(run("set", old)).isZero();
    String said = printed();
    assertThat(run("set", WORKSHOP)).isZero();
    assertThat(said).isEqualTo(printed());
  }

  @Test
  void an_unknown_profile_is_told_with_those_there_are() throws IOException {
    with("catalogue.json", catalogue, "\"takes\": [\"gannet\"]", "\"takes\": [\"nobody\"]");
    assertThat(run(job, folder.resolve("p.html"))).isEqualTo(2);
    refused("\"nobody\" is no profile", "accepted: tern, gannet, skua");
    Files.copy(YARD.resolve("catalogue.json"), folder.resolve("c2.json"));
    with(
        "c2.json", folder.resolve("c2.json"), "\"profile\": \"gannet\"", "\"profile\": \"nobody\"");
    Path second = with("second.json", job, "catalogue.json", "c2.json");
    assertThat(run(second, folder.resolve("p.html"))).isEqualTo(2);
    refused("\"nobody\" is no profile");
    Files.copy(
        YARD.resolve("catalogue.json"),
        catalogue,
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    Path inUse = with(
        "in.json", job, "\"conditions\": {", "\"conditions\": {\"profilesInUse\": [\"nobody\"],");
    assertThat(run(inUse, folder.resolve("p.html"))).isEqualTo(2);
    refused("conditions.profilesInUse", "\"nobody\"");
    Path hand = folder.resolve("hand.json");
    String text = Files.readString(job);
    Files.writeString(
        hand,
        text.substring(0, text.indexOf("\"atHand\""))
            + "\"atHand\": {\"where\": \"x\", \"socketOnly\": true, \"inUse\": [\"nobody\", \"tern\"]}, "
            + text.substring(text.indexOf("\"supply\"")));
    assertThat(run(hand, folder.resolve("p.html"))).isEqualTo(2);
    refused("atHand.inUse", "must be one of tern, gannet, skua", "\"nobody\"");
  }

  private static String many(int profiles) {
    StringBuilder text = new StringBuilder(
        "record,id,name,from,source,basis,confirmed,dimension,nominal,deviation\nset,,Many,,,,,,,\n");
    for (int i = 0; i < profiles; i++) {
      double tip = 10.0 + 8.0 * i / profiles;
      text.append("profile,p" + i + ",Profile " + i
          + ",invented,drawn,invented for demonstration,yes,tip diameter," + (float) tip
          + " mm,0.03 mm\n");
      text.append("profile,p" + i + ",,,,,,tip length," + (float) (12.0 + (i * 7 % 100) / 10.0)
          + " mm,0.06 mm\n");
      text.append("profile,p" + i + ",,,,,,groove width," + (float) (2.0 + (i * 13 % 100) / 50.0)
          + " mm,0.06 mm\n");
    }
    return text.toString();
  }

  private static String codeOf(Class<?> type) {
    try {
      return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI())
          .toString();
    } catch (java.net.URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Runs the calls in a process of their own with a heap of 512 MB. */
  private static List<String> inSmallHeap(String... calls) throws Exception {
    String code = Stream.of(
            Main.class,
            Disk.class,
            Length.class,
            NastyInputsTest.class,
            Class.forName("com.fasterxml.jackson.databind.ObjectMapper"),
            Class.forName("com.fasterxml.jackson.core.JsonFactory"),
            Class.forName("com.fasterxml.jackson.annotation.JsonInclude"))
        .map(NastyInputsTest::codeOf)
        .distinct()
        .collect(Collectors.joining(File.pathSeparator));
    List<String> command = new ArrayList<>(List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-Xmx512m",
        "-cp",
        code,
        HeavyInputs.class.getName()));
    command.addAll(List.of(calls));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(printed).isZero();
    return printed.lines().toList();
  }

  @Test
  void large_files_are_answered_or_refused_in_a_small_heap() throws Exception {
    String empty = "\n".repeat(10_000_000);
    Path onlyEmpty = Files.writeString(folder.resolve("empty.csv"), empty);
    Path below = Files.writeString(folder.resolve("below.csv"), Files.readString(WORKSHOP) + empty);
    Path commas = Files.writeString(folder.resolve("commas.csv"), ",,,,,,,,,\n".repeat(1_000_000));
    Path filled = Files.writeString(folder.resolve("filled.csv"), "a\n".repeat(7_000_000));
    Path ring = Files.writeString(folder.resolve("ring.csv"), Files.readString(RING) + empty);
    Path large = Files.writeString(folder.resolve("large.json"), " ".repeat(17 << 20));
    Path deep = Files.writeString(folder.resolve("deep.json"), "[".repeat(5_000_000));
    Path many = Files.writeString(folder.resolve("many.csv"), many(3000));
    Path manyJob = with("many.json", job, "catalogue.json", "manycat.json");
    String shop = Files.readString(catalogue);
    int parts = shop.indexOf("\"parts\"");
    int profiles = shop.indexOf("\"profiles\"");
    Files.writeString(
        folder.resolve("manycat.json"),
        shop.substring(0, profiles) + "\"profileSet\": \"many.csv\", \"parts\": []}");
    assertThat(parts).isPositive();
    List<String> lines = inSmallHeap(
        "set|" + onlyEmpty,
        "set|" + below,
        "set|" + commas,
        "set|" + filled,
        "network|" + ring + "|" + folder.resolve("n.html"),
        large.toString(),
        deep.toString(),
        "set|" + many,
        "set|" + many + "|" + folder.resolve("m.json"),
        manyJob + "|" + folder.resolve("j.html"));
    assertThat(lines).hasSize(10);
    assertThat(lines.get(0)).startsWith("2 0 ").contains("empty.csv: is empty");
    assertThat(lines.get(1)).startsWith("0 ");
    assertThat(lines.get(2)).startsWith("2 0 ").contains("commas.csv: is empty");
    assertThat(lines.get(3)).startsWith("2 0 ").contains("more than 1000000 filled cells");
    assertThat(lines.get(4)).startsWith("0 ");
    assertThat(lines.get(5)).startsWith("2 0 ").contains("is larger than 16 MB");
    assertThat(lines.get(6)).startsWith("2 0 ").contains("deep.json: is not JSON");
    assertThat(lines.get(7)).startsWith("0 ");
    assertThat(lines.get(8)).startsWith("0 ");
    assertThat(lines.get(9)).doesNotStartWith("1 ");
    assertThat(lines).noneMatch(line -> line.contains("<line end>") || line.contains("memory"));
  }
}
