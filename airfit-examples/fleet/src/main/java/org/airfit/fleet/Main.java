package org.airfit.fleet;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.WrongFileException;
import org.airfit.files.kept.LibraryVersion;
import org.airfit.plug.DemoProfiles;
import org.airfit.working.UnitSystem;
import org.apache.hadoop.fs.FSDataInputStream;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;

/** The program: judges tables of drops, identifies plugs, checks price lists, makes tables to try, measures. */
public final class Main {

  private static final String USAGE = """
      airfit-fleet, tables of tool drops, plugs and prices judged row by row (docs/fleet.md)

        drops TABLE FOLDER
            judges every tool drop of a table
        identify READINGS SET FOLDER
            identifies every plug of a table of readings by a reference set (docs/reference-set-file.md)
        catalogue check PRICES SET FOLDER
            checks every row of a price list
        generate drops|readings|prices ROWS SEED TABLE
            makes an invented table
        try FOLDER [ROWS]
            makes tables and asks all three of them; 200000 drops if no number is given
        speed [ROWS]
            measures, and prints the table of docs/fleet.md
        --help, -h
            prints this
        --version
            prints the version

      options, behind any of them:
        --format csv|parquet   of the table; that of its name if left out, else parquet
        --units US|SI          in which sizes are proposed and remarks made; US if left out
        --quick                of drops, only the verdict, the pressure and the biggest restriction
        --currency USD         of catalogue check; what the prices of the list are in
        --nested               of generate drops: columns that are objects and lists

      A table is a file or a folder. FOLDER must not be there; it comes whole or not at all, with the answers, the
      rows that were rejected and a summary as a page, summary/index.html.

      Example, from the root of the project:
        airfit-examples/fleet/run try /tmp/fleet 20000

      It ends with 0 where every row has a verdict or the output was there already, with 1 where rows were
      rejected, and with 2 where nothing was done, which one line on the error output tells.
      """;

  private static final String COMMANDS = "drops, identify, catalogue check, generate, try or speed";

  private static final List<String> FLAGS = List.of("--quick", "--nested");
  private static final List<String> VALUES = List.of("--format", "--units", "--currency");
  private static final String CSV = "csv";
  private static final String PARQUET = "parquet";
  private static final int SOME_REJECTED = 1;
  private static final int NOTHING_DONE = 2;
  private static final int TRIED = 200_000;
  private static final long SEED = 20_261_130L;

  private final SparkSession spark;
  private final Map<String, String> options;
  private final PrintStream out;

  private Main(SparkSession spark, Map<String, String> options, PrintStream out) {
    this.spark = spark;
    this.options = options;
    this.out = out;
  }

  /**
   * Runs the program.
   *
   * @param args the command and its arguments
   */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    int code = run(List.of(args), out, err);
    if (code != 0) {
      System.exit(code);
    }
  }

  /** Runs a command; its exit code. */
  static int run(List<String> args, PrintStream out, PrintStream err) {
    if (args.contains("--help") || args.contains("-h")) {
      out.print(USAGE);
      return 0;
    }
    if (args.equals(List.of("--version"))) {
      out.println("airfit-fleet " + LibraryVersion.ofCore());
      return 0;
    }
    try {
      Map<String, String> options = new LinkedHashMap<>();
      List<String> words = words(args, options);
      requireCommand(words);
      if (words.get(0).equals("speed")) {
        Speed.measure(words.size() > 1 ? number(words.get(1)) : Speed.ROWS, out);
        return 0;
      }
      SparkSession spark = Sessions.open();
      try {
        return new Main(spark, options, out).command(words);
      } finally {
        spark.stop();
      }
    } catch (WrongTableException e) {
      err.println(e.getMessage());
    } catch (WrongFileException e) {
      err.println(e.file() + ": " + e.place() + ": " + e.complaint());
    } catch (IOException e) {
      err.println("cannot read or write: " + e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      err.println("interrupted");
    }
    return NOTHING_DONE;
  }

  private static List<String> words(List<String> args, Map<String, String> options)
      throws WrongTableException {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < args.size(); i++) {
      String arg = args.get(i);
      if (FLAGS.contains(arg)) {
        options.put(arg, "");
      } else if (VALUES.contains(arg) && i + 1 < args.size()) {
        i++;
        options.put(arg, args.get(i));
      } else if (arg.startsWith("-")) {
        throw new WrongTableException(
            arg + " is no option, or lacks its value; --help tells all options");
      } else {
        words.add(arg);
      }
    }
    return words;
  }

  private int command(List<String> words)
      throws WrongTableException, WrongFileException, IOException, InterruptedException {
    String command = words.get(0);
    int size = words.size();
    if (command.equals("drops") && size == 3) {
      return told(drops(words.get(1), words.get(2)), words.get(2));
    }
    if (command.equals("identify") && size == 4) {
      return told(identify(words.get(1), words.get(2), words.get(3)), words.get(3));
    }
    if (command.equals("catalogue") && size == 5 && words.get(1).equals("check")) {
      return told(check(words.get(2), words.get(3), words.get(4)), words.get(4));
    }
    if (command.equals("generate") && size == 5) {
      generate(words.get(1), number(words.get(2)), number(words.get(3)), words.get(4));
      return 0;
    }
    if (command.equals("try") && (size == 2 || size == 3)) {
      return tried(words.get(1), size == 3 ? number(words.get(2)) : TRIED);
    }
    throw new IllegalStateException(command + " was let through");
  }

  /** Refuses what is no command before Spark is started for it. */
  private static void requireCommand(List<String> words) throws WrongTableException {
    if (words.isEmpty()) {
      throw new WrongTableException(
          "give a command: " + COMMANDS + "; --help tells what each wants");
    }
    String command = words.get(0);
    String wanted = switch (command) {
      case "drops" -> "TABLE FOLDER";
      case "identify" -> "READINGS SET FOLDER";
      case "catalogue" -> "check PRICES SET FOLDER";
      case "generate" -> "drops|readings|prices ROWS SEED TABLE";
      case "try" -> "FOLDER [ROWS]";
      case "speed" -> "[ROWS]";
      default ->
        throw new WrongTableException("\"" + command + "\" is no command; give " + COMMANDS
            + "; --help tells what each wants");
    };
    long least =
        Stream.of(wanted.split(" ", -1)).filter(word -> !word.startsWith("[")).count();
    long most = wanted.split(" ", -1).length;
    int further = words.size() - 1;
    boolean isCheck =
        !command.equals("catalogue") || further == 0 || words.get(1).equals("check");
    if (further < least || further > most || !isCheck) {
      throw new WrongTableException("give " + command + " " + wanted + "; --help tells more");
    }
  }

  private static long number(String word) throws WrongTableException {
    try {
      long number = Long.parseLong(word);
      if (number >= 1) {
        return number;
      }
    } catch (NumberFormatException e) { // told below
    }
    throw new WrongTableException("\"" + word + "\" is no whole number above 0");
  }

  private int told(Optional<FleetRun.Counts> counts, String folder) {
    if (counts.isEmpty()) {
      out.println(folder + " is there already, complete; nothing was done");
      return 0;
    }
    out.println(counts.get() + "; the summary is " + folder + "/summary/index.html");
    return counts.get().rejects() > 0 ? SOME_REJECTED : 0;
  }

  private String format(String table) throws WrongTableException {
    String usual = table.endsWith("." + CSV) ? CSV : PARQUET;
    String format = options.getOrDefault("--format", usual);
    if (!List.of(CSV, PARQUET).contains(format)) {
      throw new WrongTableException("--format was " + format + "; accepted: csv, parquet");
    }
    return format;
  }

  private UnitSystem units() throws WrongTableException {
    String units = options.getOrDefault("--units", UnitSystem.US.name());
    for (UnitSystem each : UnitSystem.values()) {
      if (each.name().equals(units.toUpperCase(Locale.ROOT))) {
        return each;
      }
    }
    throw new WrongTableException("--units was " + units + "; accepted: US, SI");
  }

  private Optional<FleetRun.Counts> drops(String table, String folder)
      throws WrongTableException, IOException, InterruptedException {
    DropAnswers.Depth depth =
        options.containsKey("--quick") ? DropAnswers.Depth.QUICK : DropAnswers.Depth.WHOLE;
    UnitSystem units = units();
    Dataset<Row> rows = DropAnswers.rows(InputTable.open(spark, table, format(table)));
    ToldCautions.Everywhere told = ToldCautions.Everywhere.in(spark);
    return new FleetRun(spark)
        .run(
            "drops " + depth + " " + units,
            table,
            folder,
            rows,
            counted -> DropAnswers.judged(counted, depth, units, told),
            (output, answers, headline) ->
                DropSummary.write(output, answers, headline, depth, told.all()));
  }

  private Optional<FleetRun.Counts> identify(String table, String set, String folder)
      throws WrongTableException, WrongFileException, IOException, InterruptedException {
    String text = text(set);
    PlugAnswers.set(set, text);
    Dataset<Row> rows = PlugAnswers.rows(InputTable.open(spark, table, format(table)));
    ToldCautions.Everywhere told = ToldCautions.Everywhere.in(spark);
    return new FleetRun(spark)
        .run(
            "identify by a set of hash " + text.hashCode(),
            table,
            folder,
            rows,
            counted -> PlugAnswers.judged(counted, text, told),
            (output, answers, headline) -> PlugAnswers.sum(output, answers, headline, told.all()));
  }

  private Optional<FleetRun.Counts> check(String table, String set, String folder)
      throws WrongTableException, WrongFileException, IOException, InterruptedException {
    String text = text(set);
    PlugAnswers.set(set, text);
    String currency = options.getOrDefault("--currency", "");
    Dataset<Row> rows = PriceAnswers.rows(InputTable.open(spark, table, format(table)));
    return new FleetRun(spark)
        .run(
            "catalogue check in \"" + currency + "\" by a set of hash " + text.hashCode(),
            table,
            folder,
            rows,
            counted -> PriceAnswers.judged(counted, text, currency),
            PriceAnswers::sum);
  }

  private String text(String file) throws IOException {
    Path path = new Path(file);
    try (FSDataInputStream in =
        path.getFileSystem(spark.sparkContext().hadoopConfiguration()).open(path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private void generate(String what, long rows, long seed, String table)
      throws WrongTableException {
    int partitions = Math.max(2, (int) Math.min(10_000, rows / 500_000));
    Dataset<Row> made = switch (what) {
      case "drops" ->
        options.containsKey("--nested")
            ? YardDrops.nested(spark, rows, seed, partitions)
            : YardDrops.flat(spark, rows, seed, partitions);
      case "readings" -> YardPlugs.readings(spark, rows, seed);
      case "prices" -> YardPlugs.prices(spark, rows, seed);
      default ->
        throw new WrongTableException(what + " is no table; accepted: drops, readings, prices");
    };
    made.write()
        .mode(SaveMode.ErrorIfExists)
        .option("header", "true")
        .option("escape", "\"")
        .format(format(table))
        .save(table);
  }

  /** Tables and answers below one folder. */
  private int tried(String folder, long rows)
      throws WrongTableException, WrongFileException, IOException, InterruptedException {
    java.nio.file.Path place = java.nio.file.Path.of(folder);
    if (Files.exists(place)) {
      throw new WrongTableException(folder + " is there; name a folder that is not there");
    }
    Files.createDirectories(place);
    String set = place.resolve("set.csv").toString();
    Disk.write(place.resolve("set.csv"), DemoProfiles.birds());
    options.put("--currency", "USD");
    int code = 0;
    generate("drops", rows, SEED, folder + "/drops");
    code = Math.max(code, told(drops(folder + "/drops", folder + "/judged"), folder + "/judged"));
    generate("readings", Math.max(1, rows / 20), SEED, folder + "/readings.csv");
    code = Math.max(
        code,
        told(
            identify(folder + "/readings.csv", set, folder + "/identified"),
            folder + "/identified"));
    generate("prices", Math.max(1, rows / 100), SEED, folder + "/prices.csv");
    code = Math.max(
        code, told(check(folder + "/prices.csv", set, folder + "/checked"), folder + "/checked"));
    return code == NOTHING_DONE ? code : 0; // rejects are what the invented tables are made with
  }
}
