package org.airfit.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.airfit.lesson.Plot;
import org.airfit.lesson.ProgramHelp;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Measures the library and writes down what came of it: {@code docs/performance.md} with its plots, and beside each row
 * what is wanted. {@code smoke} runs every benchmark once, for a build that wants to know that they run.
 */
public final class Performance {

  private static final String HELP = """
      Performance, measures the library and writes docs/performance.md (benchmarks/run starts it)

        java -cp airfit-benchmarks.jar org.airfit.benchmarks.Performance ...

        smoke             runs every benchmark once and times nothing
        measure FOLDER    measures for some twenty minutes, and writes performance.md and its figures in FOLDER
        page FOLDER       writes the page again from the figures that are there
        rehearse FOLDER   the same as measure, with times too short to mean anything
        --help, -h        prints this
        --version         prints the version
      Example: java -cp benchmarks/target/airfit-benchmarks.jar org.airfit.benchmarks.Performance page docs
      Exit code 0: done; 1: it could not be done; 2: the words could not be used, which one line on the error output tells.
      A benchmark by itself is run by JMH: java -cp airfit-benchmarks.jar org.openjdk.jmh.Main -h tells how.
      """;

  private static final String ISOTHERMAL = "equation=ISOTHERMAL";

  /** The benchmarks and the parameters they are measured with. */
  private static final List<Group> GROUPS = List.of(
      new Group("FrictionBenchmark", Map.of()),
      new Group("RunBenchmark", Map.of("equation", List.of("ISOTHERMAL"))),
      new Group("BatchBenchmark", Map.of()),
      new Group("PlugBenchmark.verdictAndChance$", Map.of("profileCount", List.of("20"))),
      new Group(
          "PlugBenchmark.verdictAndChance$",
          Map.of(
              "profileCount", List.of("5", "80"),
              "kind", List.of("DEVIATION"),
              "wearMm", List.of("0.0"))),
      new Group("NetworkBenchmark.steadyFlow", Map.of()),
      new Group("NetworkBenchmark.draws", Map.of("tools", List.of("200"), "ring", List.of("true"))),
      new Group(
          "[.]SelectionBenchmark",
          Map.of("job", List.of("MANY_FIT"), "ranking", List.of("FEWEST_PIECES"))),
      new Group("FirstSelectionBenchmark", Map.of()),
      new Group("QuantityBenchmark", Map.of()),
      new Group("FloorBenchmark", Map.of()));

  /** The longest line below the table. */
  private static final int WIDEST = 118;

  /** How often each program is started. */
  private static final int TURNS = 21;

  /** Of a row whose floor is not counted. */
  private static final Floor NOT_COUNTED = Floor.none();

  private record Group(String include, Map<String, List<String>> params) {}

  private final Map<String, Figure> figures = new TreeMap<>();

  private final boolean rehearses;

  private Performance(boolean rehearses) {
    this.rehearses = rehearses;
  }

  /**
   * Runs the benchmarks.
   *
   * @param args {@code smoke}; or {@code measure} and the folder of the documents; or {@code page} and that folder, to write
   *     the page again from what was measured; or {@code rehearse} and a folder, for the same page from one short look at
   *     each, whose figures are worth nothing
   * @throws RunnerException if a benchmark fails
   * @throws IOException if a document cannot be written
   * @throws InterruptedException if it is interrupted
   */
  public static void main(String[] args) throws RunnerException, IOException, InterruptedException {
    OptionalInt answered = ProgramHelp.answered(args, 1, 2, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    } else if (args.length == 1 && args[0].equals("smoke")) {
      smoke();
    } else if (args.length == 2 && args[0].equals("measure")) {
      new Performance(false).measure(Path.of(args[1]));
    } else if (args.length == 2 && args[0].equals("rehearse")) {
      new Performance(true).measure(Path.of(args[1]));
    } else if (args.length == 2 && args[0].equals("page")) {
      Performance page = new Performance(false);
      Measured measured = Measured.read(figures(Path.of(args[1])));
      page.figures.putAll(measured.figures());
      page.write(Path.of(args[1]), measured);
    } else {
      System.exit(ProgramHelp.refused(
              "Performance wants smoke, measure FOLDER, page FOLDER or rehearse FOLDER, were "
                  + String.join(" ", args))
          .getAsInt());
    }
  }

  /** Each benchmark once, the smallest of each, in this JVM: it tells that they run, and times nothing. */
  private static void smoke() throws RunnerException {
    ChainedOptionsBuilder options = new OptionsBuilder()
        .include("org[.]airfit")
        .forks(0)
        .warmupIterations(0)
        .measurementIterations(1)
        .measurementTime(TimeValue.milliseconds(10))
        .shouldFailOnError(true)
        .verbosity(VerboseMode.SILENT)
        .param("size", "1000")
        .param("tools", "50")
        .param("profileCount", "5")
        .param("equation", "ISOTHERMAL");
    System.out.println(new Runner(options.build()).run().size() + " benchmarks ran");
  }

  private void measure(Path folder) throws RunnerException, IOException, InterruptedException {
    for (Group group : GROUPS) {
      ChainedOptionsBuilder options = new OptionsBuilder()
          .include(group.include)
          .shouldFailOnError(true)
          .addProfiler(GCProfiler.class)
          .verbosity(VerboseMode.NORMAL);
      group.params.forEach((name, values) -> options.param(name, values.toArray(String[]::new)));
      if (rehearses) {
        options
            .forks(1)
            .warmupIterations(0)
            .measurementIterations(1)
            .measurementTime(TimeValue.milliseconds(10));
      }
      new Runner(options.build()).run().forEach(this::keep);
    }
    Files.createDirectories(folder.resolve("performance"));
    Measured measured = new Measured(
        machine(),
        LocalDate.now(ZoneOffset.UTC).toString(),
        figures,
        ProgramStart.measure(rehearses ? 1 : TURNS));
    measured.write(figures(folder));
    write(folder, measured);
  }

  /** Where the figures are kept. */
  private static Path figures(Path folder) {
    return folder.resolve("performance").resolve("figures.csv");
  }

  /** Writes the page and its plots. */
  private void write(Path folder, Measured measured) throws IOException {
    plot(
        folder,
        "networks",
        "Networks",
        "tools",
        List.of(
            series("main", "NetworkBenchmark.steadyFlow", "tools", "ring=false"),
            series("ring", "NetworkBenchmark.steadyFlow", "tools", "ring=true")));
    plot(
        folder,
        "catalogues",
        "Choice out of a catalogue",
        "parts",
        List.of(series("measured", "SelectionBenchmark.select", "size")));
    plot(
        folder,
        "sets",
        "Identification of a plug",
        "profiles",
        List.of(series(
            "measured",
            "PlugBenchmark.verdictAndChance",
            "profileCount",
            "kind=DEVIATION",
            "wearMm=0.0")));
    Files.writeString(folder.resolve("performance.md"), document(folder, measured));
  }

  private void keep(RunResult run) {
    String benchmark = run.getParams().getBenchmark();
    String key =
        benchmark.substring(benchmark.lastIndexOf('.', benchmark.lastIndexOf('.') - 1) + 1);
    StringBuilder name = new StringBuilder(key);
    for (String param : run.getParams().getParamsKeys()) {
      name.append(' ').append(param).append('=').append(run.getParams().getParam(param));
    }
    Result<?> primary = run.getPrimaryResult();
    Result<?> bytes = run.getSecondaryResults().get("gc.alloc.rate.norm");
    figures.put(
        name.toString(),
        new Figure(
            primary.getScore() * toNanoseconds(primary.getScoreUnit()),
            primary.getScoreError() * toNanoseconds(primary.getScoreUnit()),
            bytes == null ? Double.NaN : bytes.getScore()));
  }

  private static double toNanoseconds(String unit) {
    return switch (unit) {
      case "ns/op" -> 1.0;
      case "us/op" -> 1.0e3;
      case "ms/op" -> 1.0e6;
      default -> throw new IllegalArgumentException("unit of a benchmark was " + unit);
    };
  }

  /** The one figure whose name begins so and holds all that is said. */
  private Figure figure(String benchmark, String... params) {
    List<Figure> found = new ArrayList<>();
    figures.forEach((name, figure) -> {
      List<String> words = Arrays.asList(name.split(" "));
      if (words.get(0).equals(benchmark) && words.containsAll(Arrays.asList(params))) {
        found.add(figure);
      }
    });
    if (found.size() != 1) {
      throw new IllegalStateException(found.size() + " figures of " + benchmark + " "
          + Arrays.toString(params) + " among " + figures.keySet());
    }
    return found.get(0);
  }

  private void plot(Path folder, String file, String title, String of, List<Series> lines)
      throws IOException {
    Plot plot = Plot.of(title, of, "time [ms]");
    for (Series line : lines) {
      String sizes = lines.size() == 1 ? "sizes measured" : line.name + ", sizes measured";
      plot = plot.line(line.name, line.x, line.y).points(sizes, line.x, line.y);
    }
    String powers = lines.stream()
        .map(line ->
            said("%.2f", line.exponent()) + (lines.size() == 1 ? "" : " (" + line.name + ")"))
        .collect(Collectors.joining(", "));
    String svg = plot.fromZero()
        .shows("The time grows with the number of " + of + " to the power " + powers + ".")
        .svg();
    Files.writeString(folder.resolve("performance").resolve(file + ".svg"), svg);
  }

  /** The figures of a benchmark by one of its parameters, the others as said. */
  private Series series(String name, String benchmark, String param, String... fixed) {
    Map<Double, Double> found = new TreeMap<>();
    figures.forEach((key, figure) -> {
      List<String> words = Arrays.asList(key.split(" "));
      if (words.get(0).equals(benchmark) && words.containsAll(Arrays.asList(fixed))) {
        words.stream()
            .filter(word -> word.startsWith(param + "="))
            .forEach(word -> found.put(
                Double.valueOf(word.substring(param.length() + 1)), figure.nanoseconds / 1.0e6));
      }
    });
    return new Series(
        name,
        found.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
        found.values().stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Times [ms] by sizes. */
  private static final class Series {

    private final String name;
    private final double[] x;
    private final double[] y;

    Series(String name, double[] x, double[] y) {
      this.name = name;
      this.x = x;
      this.y = y;
    }

    /** The slope of a line through the logarithms, by least squares. */
    double exponent() {
      DoubleUnaryOperator log = Math::log;
      double meanX = Arrays.stream(x).map(log).average().orElseThrow();
      double meanY = Arrays.stream(y).map(log).average().orElseThrow();
      double both = 0.0;
      double squares = 0.0;
      for (int i = 0; i < x.length; i++) {
        both += (Math.log(x[i]) - meanX) * (Math.log(y[i]) - meanY);
        squares += (Math.log(x[i]) - meanX) * (Math.log(x[i]) - meanX);
      }
      return both / squares;
    }
  }

  private String document(Path folder, Measured measured) throws IOException {
    ProgramStart.Medians program = measured.program();
    Path besidePython = folder.resolve("performance").resolve("beside-python.txt");
    String python = Files.exists(besidePython) ? Files.readString(besidePython) : "Not asked yet.";
    Figure haaland = figure("FrictionBenchmark.haaland");
    Figure colebrook = figure("FrictionBenchmark.colebrook");
    Figure number = figure("RunBenchmark.number", ISOTHERMAL);
    Figure at = figure("RunBenchmark.at", ISOTHERMAL);
    Figure one = figure("BatchBenchmark.oneCore");
    Figure multiply = figure("QuantityBenchmark.multiply");
    Table table = new Table(operation -> figure(operation.benchmark()).nanoseconds);
    table.time("Haaland's approximation, the yardstick of the machine", haaland);
    table.ratio("Colebrook over Haaland", colebrook, haaland, 1.0, Floor.COLEBROOK);
    table.atLeast(
        "Brent's method over Colebrook",
        figure("FrictionBenchmark.colebrookByBrent"),
        colebrook,
        6.0,
        Floor.COLEBROOK);
    table.ratio(
        "outlet of a hose, viscosity of its air included, over Colebrook",
        figure("FrictionBenchmark.isothermalOutlet"),
        colebrook,
        3.0,
        Floor.OUTLET);
    table.time("run of four elements, as a number", number, 200.0, Floor.RUN);
    table.bytes("the same, allocated", number, 0.0);
    table.time("`Run.at`", at, 600.0, Floor.RUN);
    table.runs(
        "`balance` over a run as a number",
        figure("RunBenchmark.balance", ISOTHERMAL),
        number,
        12.0,
        Floor.RUNS_OF_SEARCH);
    table.runs(
        "`largestFlow` over a run as a number",
        figure("RunBenchmark.largestFlow", ISOTHERMAL),
        number,
        12.0,
        Floor.RUNS_OF_SEARCH);
    table.time("a run in a batch of a million, on one core", one, 1.0e9 / 3.0e6, Floor.RUN);
    table.atLeast("one core over two", one, figure("BatchBenchmark.twoCores"), 1.8, 2.0);
    for (String kind : List.of("DEVIATION", "LIMITS", "PIECES")) {
      for (String wear : List.of("0.0", "0.1")) {
        boolean worn = !wear.equals("0.0");
        table.time(
            "plug among 20 profiles by five dimensions, set by " + kind.toLowerCase(Locale.ROOT)
                + (worn ? ", worn" : ""),
            figure(
                "PlugBenchmark.verdictAndChance",
                "profileCount=20",
                "kind=" + kind,
                "wearMm=" + wear),
            worn ? 30_000.0 : kind.equals("DEVIATION") ? 2_000.0 : 10_000.0,
            Floor.ofPlug(kind, worn));
      }
    }
    for (String ring : List.of("false", "true")) {
      String what = ring.equals("true") ? "ring" : "main";
      table.time(
          "network: " + what + " with 200 tools",
          figure("NetworkBenchmark.steadyFlow", "tools=200", "ring=" + ring),
          1.0e6,
          Floor.ofNetwork(200));
      table.time(
          "network: " + what + " with 1,000 tools",
          figure("NetworkBenchmark.steadyFlow", "tools=1000", "ring=" + ring),
          6.0e6,
          Floor.ofNetwork(1000));
      table.solved(
          "network: " + what + " with 5,000 tools, 10,000 nodes",
          figure("NetworkBenchmark.steadyFlow", "tools=5000", "ring=" + ring));
      table.exponent(
          "power of the tools with which the time of a " + what + " grows",
          series(what, "NetworkBenchmark.steadyFlow", "tools", "ring=" + ring).exponent(),
          1.15);
    }
    table.ratio(
        "a draw of a simulation over a solution, ring with 200 tools",
        figure("NetworkBenchmark.draws", "tools=200", "ring=true"),
        figure("NetworkBenchmark.steadyFlow", "tools=200", "ring=true"),
        1.0,
        NOT_COUNTED);
    table.time(
        "choice out of 10,000 parts, warm",
        figure("SelectionBenchmark.select", "size=10000"),
        30.0e6,
        Floor.CHOICE);
    table.time(
        "the first choice of a program",
        figure("FirstSelectionBenchmark.select"),
        150.0e6,
        Floor.CHOICE);
    table.time(
        "`GaugePressure.parse(\"90 psig\")`",
        figure("QuantityBenchmark.parse"),
        100.0,
        Floor.PSI_TO_PASCALS);
    table.time("`format`", figure("QuantityBenchmark.format"), 150.0, Floor.PSI_TO_PASCALS);
    table.ratio(
        "bar to pascals over a multiplication",
        figure("QuantityBenchmark.barToPascals"),
        multiply,
        1.2,
        Floor.BAR_TO_PASCALS);
    table.ratio(
        "psi to bar over a multiplication",
        figure("QuantityBenchmark.psiToBar"),
        multiply,
        1.2,
        Floor.PSI_TO_BAR);
    String classes =
        "loading and linking " + count(program.ownClasses()) + " classes of the program and "
            + count(program.jdkClasses()) + " of the JDK, in a JVM that does nothing else";
    table.process("a JVM that does nothing, as a whole process", program.empty());
    table.process(
        "program of the job sheets, from start to page",
        program.plain(),
        450.0e6,
        program.loading(),
        classes);
    table.process(
        "the same with an archive of its classes",
        program.archived(),
        300.0e6,
        program.loadingArchived(),
        "the same, from an archive");
    return new String(
            Performance.class.getResourceAsStream("performance.md").readAllBytes(),
            java.nio.charset.StandardCharsets.UTF_8)
        .replace("@machine@", measured.machine())
        .replace("@date@", measured.date())
        .replace("@table@", table.toString())
        .replace("@python@", python.strip())
        .replace("@costs@", table.costs())
        .replace("@floors@", table.floors());
  }

  private static String machine() throws IOException {
    Path info = Path.of("/proc/cpuinfo");
    String processor = Files.exists(info)
        ? Files.readAllLines(info).stream()
            .filter(line -> line.startsWith("model name"))
            .map(line -> line.substring(line.indexOf(':') + 1).strip())
            .findFirst()
            .orElse("unknown processor")
        : System.getProperty("os.arch");
    return Runtime.getRuntime().availableProcessors() + " cores of " + processor + ", "
        + System.getProperty("os.name") + ", " + System.getProperty("java.vm.name") + " "
        + System.getProperty("java.version");
  }

  /** A count with its thousands. */
  static String count(double value) {
    return said("%,.0f", value);
  }

  static String said(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }

  /**
   * What was measured.
   *
   * @param nanoseconds the mean of an answer [ns]
   * @param error half of the interval that holds the mean in 99.9 % of all cases [ns]
   * @param bytes what an answer allocates [B]
   */
  record Figure(double nanoseconds, double error, double bytes) {

    /** The ratio of two, its error from both. */
    Ratio over(Figure other) {
      double ratio = nanoseconds / other.nanoseconds;
      return new Ratio(
          ratio, ratio * Math.hypot(error / nanoseconds, other.error / other.nanoseconds));
    }
  }

  /**
   * How many times as long one takes as another.
   *
   * @param value the ratio [-]
   * @param error its error [-]
   */
  record Ratio(double value, double error) {}

  /** The rows of the document, and what their floors are counted from. */
  private static final class Table {

    private final StringBuilder rows = new StringBuilder("""
        | what | measured | wanted | | floor | over it |
        | --- | --- | --- | --- | --- | --- |
        """);
    private final StringBuilder floors = new StringBuilder();
    private final ToDoubleFunction<Floor.Operation> cost;

    Table(ToDoubleFunction<Floor.Operation> cost) {
      this.cost = cost;
    }

    private void row(
        String what, String measured, String wanted, boolean isMet, String floor, String over) {
      row(what, measured, wanted, isMet ? "met" : "not met", floor, over);
    }

    private void row(
        String what, String measured, String wanted, String verdict, String floor, String over) {
      rows.append("| ")
          .append(String.join(" | ", what, measured, wanted, verdict, floor, over))
          .append(" |\n");
    }

    /** Says below the table what a floor is counted from; returns what it comes to [ns]. */
    private double floor(String what, Floor floor) {
      double nanoseconds = floor.nanoseconds(cost);
      counted(what, floor + ": " + inUnit(nanoseconds));
      return nanoseconds;
    }

    private void counted(String what, String from) {
      StringBuilder line = new StringBuilder("-");
      for (String word : (what + ": " + from + ".").split(" ", -1)) {
        if (line.length() + 1 + word.length() > WIDEST) {
          floors.append(line).append('\n');
          line = new StringBuilder(" ");
        }
        line.append(' ').append(word);
      }
      floors.append(line).append('\n');
    }

    private static String times(double value) {
      return Performance.said("%.1f", value);
    }

    void ratio(String what, Figure one, Figure other, double most, Floor ofOne) {
      Ratio ratio = one.over(other);
      boolean isMet = ratio.value <= most;
      if (ofOne == NOT_COUNTED) {
        row(what, said(ratio), "at most " + plain(most), isMet, "", "");
        return;
      }
      double floor = floor(what, ofOne);
      row(
          what,
          said(ratio),
          "at most " + plain(most),
          isMet,
          Performance.said("%.2f", floor / other.nanoseconds),
          times(one.nanoseconds / floor));
    }

    /** Of a ratio of runs, whose floor is a number of runs. */
    void runs(String what, Figure one, Figure run, double most, double fewest) {
      Ratio ratio = one.over(run);
      counted(what, plain(fewest) + " runs");
      row(
          what,
          said(ratio),
          "at most " + plain(most),
          ratio.value <= most,
          plain(fewest),
          times(ratio.value / fewest));
    }

    /** Of a ratio that cannot be larger than so much. */
    void atLeast(String what, Figure one, Figure other, double least, double most) {
      Ratio ratio = one.over(other);
      row(
          what,
          said(ratio),
          "at least " + plain(least),
          ratio.value >= least,
          plain(most) + " at most",
          times(most / ratio.value));
    }

    void atLeast(String what, Figure one, Figure other, double least, Floor ofOther) {
      Ratio ratio = one.over(other);
      double floor = floor(what, ofOther);
      row(
          what,
          said(ratio),
          "at least " + plain(least),
          ratio.value >= least,
          Performance.said("%.2f", one.nanoseconds / floor) + " at most",
          times(other.nanoseconds / floor));
    }

    void time(String what, Figure figure, double most, Floor of) {
      String measured = inUnit(figure.nanoseconds)
          + (Double.isNaN(figure.error) ? "" : " ± " + inUnit(figure.error));
      boolean isMet = figure.nanoseconds <= most;
      if (of == NOT_COUNTED) {
        row(what, measured, "at most " + inUnit(most), isMet, "", "");
        return;
      }
      double floor = floor(what, of);
      row(
          what,
          measured,
          "at most " + inUnit(most),
          isMet,
          inUnit(floor),
          times(figure.nanoseconds / floor));
    }

    /** Of a time of which nothing is wanted. */
    void time(String what, Figure figure) {
      row(what, inUnit(figure.nanoseconds) + " ± " + inUnit(figure.error), "", "", "", "");
    }

    /** Of a time in which an answer is wanted, whatever it is: the benchmark refuses to time another. */
    void solved(String what, Figure figure) {
      String measured = inUnit(figure.nanoseconds) + " ± " + inUnit(figure.error);
      row(what, measured, "solved", true, "", "");
    }

    void exponent(String what, double power, double most) {
      row(what, Performance.said("%.2f", power), "at most " + plain(most), power <= most, "", "");
    }

    void process(String what, double median) {
      row(what, inUnit(median), "", "", "", "");
    }

    void process(String what, double median, double most, double floor, String from) {
      counted(what, from + ": " + inUnit(floor));
      row(
          what,
          inUnit(median),
          "at most " + inUnit(most),
          median <= most,
          inUnit(floor),
          times(median / floor));
    }

    void bytes(String what, Figure figure, double most) {
      row(
          what,
          Performance.said("%.0f B", figure.bytes),
          "at most " + plain(most) + " B",
          figure.bytes < most + 0.5,
          "",
          "");
    }

    /** What each of the bare operations costs, one on a line. */
    String costs() {
      StringBuilder costs = new StringBuilder("| one | costs |\n| --- | --- |\n");
      for (Floor.Operation operation : Floor.Operation.values()) {
        costs
            .append("| ")
            .append(operation.called())
            .append(" | ")
            .append(inUnit(cost.applyAsDouble(operation)))
            .append(" |\n");
      }
      return costs.toString();
    }

    /** From what each floor is counted, one on a line. */
    String floors() {
      return floors.toString();
    }

    private static String said(Ratio ratio) {
      return Performance.said("%.2f", ratio.value) + " ± " + Performance.said("%.2f", ratio.error);
    }

    private static String plain(double value) {
      return value == Math.rint(value) ? Performance.said("%.0f", value) : String.valueOf(value);
    }

    private static String inUnit(double nanoseconds) {
      if (nanoseconds < 1.0e3) {
        return Performance.said("%.3g ns", nanoseconds);
      }
      if (nanoseconds < 1.0e6) {
        return Performance.said("%.3g µs", nanoseconds / 1.0e3);
      }
      return nanoseconds < 1.0e9
          ? Performance.said("%.3g ms", nanoseconds / 1.0e6)
          : Performance.said("%.3g s", nanoseconds / 1.0e9);
    }

    @Override
    public String toString() {
      return rows.toString();
    }
  }
}
