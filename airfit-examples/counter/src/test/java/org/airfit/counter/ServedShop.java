package org.airfit.counter;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;

/**
 * A service over an invented shop in a process of its own. Its arguments are a folder for the database, a catalogue
 * file, and the counter page or "-"; it prints its address, loads each table whose path it is told on a line of input,
 * and ends with its input.
 */
final class ServedShop implements AutoCloseable {

  private static final Pattern USED = Pattern.compile("used ([0-9]+)K");

  /** It fills with what is stored; held small, so that anything else that grows is seen [kB]. */
  private static final String CACHE = ";CACHE_SIZE=4096";

  private final Process process;
  private final BufferedReader out;
  private final Path log;
  private final int port;

  private ServedShop(Process process, BufferedReader out, Path log, int port) {
    this.process = process;
    this.out = out;
    this.log = log;
    this.port = port;
  }

  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[1]);
    Settings settings = Settings.usual()
        .at(Settings.THIS_MACHINE, 0, Optional.ofNullable(System.getenv("AIRFIT_TOKEN")));
    try (Database database = Database.open(Database.embedded(Path.of(args[0])) + CACHE)) {
      Stock stock = Shops.stocked(database, file);
      try (CounterService service = CounterService.start(
              args[2].equals("-") ? settings : settings.withPage(Path.of(args[2])),
              stock,
              Shelf.of(database, Clock.systemUTC()));
          BufferedReader in =
              new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
        System.out.println("http://127.0.0.1:" + service.port() + "/");
        for (String line = in.readLine(); line != null; line = in.readLine()) {
          System.out.println(stock.load(Path.of(line)));
        }
      }
    }
  }

  /** Starts one; what it logs goes into a file of the folder. */
  static ServedShop start(Path folder, Path catalogue) throws IOException {
    Path log = folder.resolve("log");
    List<String> command = List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-Xmx512m",
        "-Dslf4j.provider=org.slf4j.nop.NOPServiceProvider",
        // One line for each entry.
        "-Djava.util.logging.SimpleFormatter.format=%3$s %4$s %5$s%6$s%n",
        "-cp",
        System.getProperty("java.class.path"),
        ServedShop.class.getName(),
        folder.resolve("stock").toString(),
        catalogue.toString(),
        "-");
    Process process = new ProcessBuilder(command).redirectError(log.toFile()).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String address = out.readLine();
    if (address == null) {
      throw new IOException("the service did not start: " + Files.readString(log));
    }
    int port = Integer.parseInt(address.replaceAll("\\D*127\\.0\\.0\\.1:(\\d+)/", "$1"));
    return new ServedShop(process, out, log, port);
  }

  int port() {
    return port;
  }

  /** Loads a table of articles. */
  String load(Path table) throws IOException {
    PrintStream in = new PrintStream(process.getOutputStream(), true, StandardCharsets.UTF_8);
    in.println(table);
    return String.valueOf(out.readLine());
  }

  /** What it logged so far. */
  List<String> logged() throws IOException {
    return Files.readAllLines(log);
  }

  /** What its heap holds after everything that is not needed was thrown away [bytes]. */
  long heapBytes() throws IOException, InterruptedException {
    jcmd("GC.run");
    jcmd("GC.run");
    Matcher used = USED.matcher(jcmd("GC.heap_info"));
    if (!used.find()) {
      throw new IOException("jcmd tells no heap");
    }
    return Long.parseLong(used.group(1)) * 1024;
  }

  private String jcmd(String what) throws IOException, InterruptedException {
    Process jcmd = new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
            String.valueOf(process.pid()),
            what)
        .redirectErrorStream(true)
        .start();
    String told = new String(jcmd.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    jcmd.waitFor();
    return told;
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    try {
      if (!process.waitFor(10, TimeUnit.MINUTES)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
