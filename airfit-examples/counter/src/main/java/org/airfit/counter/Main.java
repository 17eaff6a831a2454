package org.airfit.counter;

import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.LoadReport;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;
import org.airfit.files.Printable;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.files.kept.LibraryVersion;
import org.airfit.plug.DemoProfiles;
import org.jspecify.annotations.Nullable;

/** The program: tells what the shop is, loads tables of articles, serves, and measures a load. */
public final class Main {

  private static final String USAGE = """
      airfit-counter, a shop's stock in a database and a service that answers over it (docs/counter-service.md)

        shop CATALOGUE.json CURRENCY
            stores name, profiles and articles of a catalogue file (docs/job-file.md); CURRENCY is three letters
        load ARTICLES.csv [REJECTS.csv]
            stores a table of articles; writes the rows that were not stored, with reasons, to REJECTS.csv
        serve
            answers over HTTP until it is ended, and prints its address
        measure
            loads 100000 invented articles into a database of its own, or an empty one, and prints how long it took
        help, --help, -h
            prints this
        --version
            prints the version

      options, behind any of them:
        --database URL   jdbc:h2:… or jdbc:postgresql:…; the folder airfit-stock here if left out
        --address IP     where serve listens; 127.0.0.1 if left out
        --port N         8080 if left out; 0 takes a free one
        --page FILE      the counter page to serve, airfit-served.html

      Where others can reach the service, a token of 16 letters or more stands in the variable AIRFIT_TOKEN.

      Example, in the folder of its jar:
        java -jar airfit-counter-VERSION.jar shop ../../jobs/boatyard/catalogue.json USD
        java -jar airfit-counter-VERSION.jar serve --port 8081

      It ends with 0 where all was done, with 1 where rows of a table were rejected and the others stored, and
      with 2 where nothing was done, which one line on the error output tells.
      """;

  private static final List<String> OPTIONS =
      List.of("--database", "--address", "--port", "--page");

  /** Rows of a table were not stored, and others were. */
  private static final int SOME_REJECTED = 1;

  private static final int USUAL_PORT = 8080;
  private static final int MEASURED = 100_000;
  private static final int NANOS_PER_MILLI = 1_000_000;

  private Main() {}

  /**
   * Runs the program.
   *
   * @param args what to do; the usage has it
   */
  public static void main(String[] args) {
    for (String library : List.of("org.flywaydb", "com.zaxxer.hikari", "org.eclipse.jetty")) {
      QUIET.add(Logger.getLogger(library));
    }
    QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
    int code = run(args, System.getenv("AIRFIT_TOKEN"), System.out, System.err);
    if (code != 0) {
      System.exit(code);
    }
  }

  /** Kept, or their level would be forgotten. */
  private static final List<Logger> QUIET = new ArrayList<>();

  static int run(String[] args, @Nullable String token, PrintStream out, PrintStream err) {
    return run(args, token, MEASURED, out, err);
  }

  /** The same, where so many articles are measured. */
  static int run(
      String[] args, @Nullable String token, int measured, PrintStream out, PrintStream err) {
    if (Stream.of(args).anyMatch(word -> word.equals("--help") || word.equals("-h"))) {
      out.print(USAGE);
      return 0;
    }
    if (List.of(args).equals(List.of("--version"))) {
      out.println("airfit-counter " + LibraryVersion.ofCore());
      return 0;
    }
    try {
      Map<String, String> options = new LinkedHashMap<>();
      List<String> words = new ArrayList<>();
      for (int i = 0; i < args.length; i++) {
        if (!args[i].startsWith("-")) {
          words.add(args[i]);
        } else if (OPTIONS.contains(args[i]) && i + 1 < args.length) {
          options.put(args[i], args[++i]);
        } else {
          throw new IllegalArgumentException(
              args[i] + " is no option, or its value is missing; --help tells all options");
        }
      }
      String command = words.isEmpty() ? "" : words.get(0);
      if (command.equals("measure") && words.size() == 1) {
        measure(Optional.ofNullable(options.get("--database")), measured, out);
        return 0;
      }
      if (command.equals("help")) {
        out.print(USAGE);
        return 0;
      }
      requireCommand(command, words.size() - 1);
      String url = options.getOrDefault("--database", Database.embedded(Path.of("airfit-stock")));
      if (command.equals("load")) {
        requireTable(Path.of(words.get(1)));
        if (words.size() > 2) {
          requireWritable(Path.of(words.get(2)));
        }
      }
      Settings settings = settings(options, token);
      try (Database database = Database.open(url)) {
        Stock stock = Stock.of(database, Clock.systemUTC());
        return switch (command + " " + words.size()) {
          case "shop 3" -> shop(stock, Path.of(words.get(1)), words.get(2), out, err);
          case "load 2" -> load(stock, Path.of(words.get(1)), Optional.empty(), out, err);
          case "load 3" ->
            load(stock, Path.of(words.get(1)), Optional.of(Path.of(words.get(2))), out, err);
          case "serve 1" -> serve(stock, Shelf.of(database, Clock.systemUTC()), settings, out);
          default -> throw new IllegalStateException(command + " is no command");
        };
      }
    } catch (InvalidPathException e) {
      err.println("a path is wanted, was \"" + Printable.line(e.getInput()) + "\"");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 0;
    } catch (IllegalArgumentException | WrongFileException | SQLException | IOException e) {
      err.println(Printable.lines(String.valueOf(e.getMessage())));
    }
    return 2;
  }

  private static void requireCommand(String command, int further) {
    if (command.isEmpty()) {
      throw new IllegalArgumentException(
          "give a command: shop, load, serve or measure; --help tells what each wants");
    }
    String wanted = switch (command) {
      case "shop" -> "two words behind it, CATALOGUE.json CURRENCY";
      case "load" -> "one or two words behind it, ARTICLES.csv [REJECTS.csv]";
      case "serve", "measure" -> "no words behind it but options";
      default ->
        throw new IllegalArgumentException("\"" + command
            + "\" is no command; give shop, load, serve or measure; --help tells what each wants");
    };
    if (!List.of("shop 2", "load 1", "load 2", "serve 0").contains(command + " " + further)) {
      throw new IllegalArgumentException(
          command + " wants " + wanted + ", were " + further + "; --help tells more");
    }
  }

  private static Settings settings(Map<String, String> options, @Nullable String token) {
    String port = options.getOrDefault("--port", String.valueOf(USUAL_PORT));
    if (!port.matches("[0-9]{1,5}")) {
      throw new IllegalArgumentException("port must be in [0, 65535], was \"" + port + "\"");
    }
    Settings settings = Settings.usual()
        .at(
            options.getOrDefault("--address", Settings.THIS_MACHINE),
            Integer.parseInt(port),
            Optional.ofNullable(token).filter(word -> !word.isEmpty()));
    if (!options.containsKey("--page")) {
      return settings;
    }
    Path page = Path.of(options.get("--page"));
    if (!Files.isRegularFile(page)) {
      throw new IllegalArgumentException("page must be a file that is there, such as"
          + " airfit-served.html of airfit-examples/browser/page, was " + page);
    }
    return settings.withPage(page);
  }

  /** Looks for a table before a database is opened for it. */
  private static void requireTable(Path file) {
    if (!Files.isRegularFile(file)) {
      throw new IllegalArgumentException(file + ": there is "
          + (Files.exists(file) ? "no file but something else" : "no such file")
          + "; give the path of a table of articles, a CSV file. Nothing was stored.");
    }
  }

  /** Tries to write a file before anything is done of which it shall tell; what stands in it stays. */
  private static void requireWritable(Path file) {
    boolean isNew = Files.notExists(file);
    try {
      Files.newOutputStream(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)
          .close();
      if (isNew) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new IllegalArgumentException(
          file
              + ": the list of rejects cannot be written there; give the path of a file in a folder that is there"
              + " and may be written to. Nothing was stored.",
          e);
    }
  }

  /** Says what came of a table; another code than 0 where not all of it is stored. */
  private static int told(LoadReport report, Optional<Path> rejects, PrintStream err) {
    int rejected = report.rejects().size();
    if (rejected == 0) {
      return 0;
    }
    err.println(rejected + " of " + report.rowsIn() + " rows of " + Printable.line(report.file())
        + " were not stored, the others were; mend them as "
        + rejects.map(path -> Printable.line(path.toString())).orElse("the list above")
        + " says, and load the file again.");
    return SOME_REJECTED;
  }

  private static int shop(Stock stock, Path file, String currency, PrintStream out, PrintStream err)
      throws SQLException, WrongFileException, IOException {
    ShopCatalogue catalogue = Disk.catalogue(file);
    Map<String, Object> fields = Disk.fields(file, new ArrayList<>());
    Object told = fields.get("currency");
    if (told != null && !told.equals(currency)) {
      throw new IllegalArgumentException("currency must be that of the file, " + told + ", was \""
          + currency + "\"; airfit knows no rates");
    }
    stock.describe(catalogue.name(), Optional.of(currency), catalogue.profiles());
    LoadReport report =
        stock.load(String.valueOf(file.getFileName()), new StringReader(Stock.toTable(fields)));
    out.println(report);
    if (!report.rejects().isEmpty()) {
      out.print(report.toCsv());
    }
    return told(report, Optional.empty(), err);
  }

  private static int load(
      Stock stock, Path file, Optional<Path> rejects, PrintStream out, PrintStream err)
      throws SQLException, WrongFileException, IOException {
    if (rejects.isPresent()) {
      Disk.requireOther(rejects.get(), List.of(file));
    }
    LoadReport report = stock.load(file);
    out.println(report);
    Optional<Path> written = rejects;
    if (rejects.isPresent()) {
      try {
        Disk.write(rejects.get(), report.toCsv());
      } catch (
          WrongFileException e) { // such as a disk that is full; the rows are stored all the same
        err.println(Printable.lines(String.valueOf(e.getMessage())));
        written = Optional.empty();
      }
    }
    if (written.isEmpty() && !report.rejects().isEmpty()) {
      out.print(report.toCsv());
    }
    return told(report, written, err);
  }

  private static int serve(Stock stock, Shelf shelf, Settings settings, PrintStream out)
      throws IOException, InterruptedException, SQLException {
    if (stock.version() == 0) {
      throw new IllegalArgumentException("database must hold a shop to be served, holds none;"
          + " tell it first: airfit-counter shop CATALOGUE.json CURRENCY");
    }
    try (CounterService service = CounterService.start(settings, stock, shelf)) {
      out.println("http://" + settings.address() + ":" + service.port() + "/");
      service.join();
    }
    return 0;
  }

  /** Loads invented articles into a database without a shop; one of its own is deleted afterwards. */
  private static void measure(Optional<String> url, int articles, PrintStream out)
      throws SQLException, WrongFileException, IOException {
    Path folder = Files.createTempDirectory("airfit-measure");
    try {
      try (Database database = Database.open(url.orElse(Database.embedded(folder)))) {
        Stock stock = Stock.of(database, Clock.systemUTC());
        if (stock.version() != 0) {
          throw new IllegalArgumentException(
              "database must be an empty one to measure in, has a shop; leave --database out");
        }
        stock.describe("invented articles", Optional.of("USD"), DemoProfiles.birds());
        measure(stock, articles, folder.resolve("articles.csv"), out);
      }
    } finally {
      delete(folder);
    }
  }

  private static void delete(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> walked = Files.walk(folder)) {
      files = walked.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path file : files) {
      Files.delete(file);
    }
  }

  private static void measure(Stock stock, int articles, Path file, PrintStream out)
      throws SQLException, WrongFileException, IOException {
    for (String round : List.of("first", "again", "with other prices")) {
      Files.writeString(file, invented(articles, round.endsWith("prices") ? 1 : 0));
      long began = System.nanoTime();
      Duration before = cpu();
      LoadReport report = stock.load(file);
      out.println(round + ": " + report + ", " + took(began, before));
    }
    long began = System.nanoTime();
    Duration before = cpu();
    int parts = stock.catalogue().parts().parts().size();
    out.println("read as one catalogue: " + parts + " parts, " + took(began, before));
  }

  private static String invented(int articles, int dearer) {
    StringBuilder table =
        new StringBuilder("kind,id,name,price,quantity,end,otherEnd,bore,length,wall,rated\n");
    for (int i = 0; i < articles; i++) {
      table
          .append("adapter,M-")
          .append(i)
          .append(",Adapter ")
          .append(i)
          .append(',')
          .append(dearer + 1 + i % 90)
          .append('.')
          .append(10 + i % 90)
          .append(',')
          .append(i % 500)
          .append(",1/4 NPT male,3/8 NPT female,8 mm,40 mm,drawn copper or brass,16 bar(g)\n");
    }
    return table.toString();
  }

  private static String took(long began, Duration before) {
    return (System.nanoTime() - began) / NANOS_PER_MILLI + " ms, "
        + cpu().minus(before).toMillis() + " ms of CPU";
  }

  /** What all threads of this process took, compiling and collecting too; 0 where nobody knows. */
  private static Duration cpu() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
  }
}
