package org.airfit.counter.stock;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.airfit.select.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A process that loads tables and reserves pieces is killed at random moments (SIGKILL). What it was told to be stored
 * is there, no table is half there, and the next load completes.
 */
class KilledLoadTest {

  static final String SCARCE = "K-0";

  private static final long SEED = 20_261_129L;

  /** As many as a build takes time for; -Dairfit.kills=20 for more. */
  private static final int KILLS = Integer.getInteger("airfit.kills", 6);

  private static final int ROWS = 300;

  /** So many processes run at once, each on a database of its own. */
  private static final int LANES = 2;

  /** A load takes about so long [ms]; a kill falls somewhere within. */
  private static final int WITHIN = 300;

  private final List<String> wrong = Collections.synchronizedList(new ArrayList<>());
  private final List<Catalogue> whole = new ArrayList<>();
  private List<Path> tables = List.of();
  private final AtomicInteger amid = new AtomicInteger();

  @Test
  void nothing_is_half_stored_and_nothing_told_is_lost(@TempDir Path folder) throws Exception {
    tables = List.of(folder.resolve("even.csv"), folder.resolve("odd.csv"));
    Files.writeString(tables.get(0), table("1.10", "gannet", "1/4 NPT male"));
    Files.writeString(tables.get(1), table("2.20", "gannet | skua", "3/8 NPT female"));
    try (Database database = Database.open(Database.embedded(folder.resolve("whole")))) {
      Stock stock = Shops.boatyard(database);
      for (Path table : tables) {
        stock.load(table);
        whole.add(stock.catalogue().parts());
      }
    }
    ExecutorService lanes = Executors.newFixedThreadPool(LANES);
    List<Future<Integer>> stored = new ArrayList<>();
    for (int lane = 0; lane < LANES; lane++) {
      long seed = SEED + lane;
      stored.add(lanes.submit(() -> lane(folder.resolve("lane" + seed), seed)));
    }
    int all = 0;
    for (Future<Integer> each : stored) {
      all += each.get(5, TimeUnit.MINUTES);
    }
    lanes.shutdown();
    System.out.println(KILLS + " kills with seeds from " + SEED + ", " + amid
        + " of them amid a load, " + all + " tables stored");
    assertThat(wrong).as("what was wrong after a kill").isEmpty();
    assertThat(amid)
        .as("kills that fell amid a load")
        .hasValueGreaterThan(KILLS < 20 ? KILLS / 4 : KILLS / 2);
  }

  /** Kills one process after the other on a database of their own; the count of the tables stored in it. */
  private int lane(Path place, long seed) throws Exception {
    Random random = new Random(seed);
    try (Database database = Database.open(Database.embedded(place))) {
      Shops.boatyard(database).load(tables.get(0));
    }
    int stored = 1;
    for (int kill = 0; kill < KILLS / LANES; kill++) {
      stored = kill("seed " + seed + ", kill " + kill, place, stored, random.nextInt(WITHIN));
    }
    return stored;
  }

  /** Kills a process, looks at what is there, and loads again; the count of the tables stored then. */
  private int kill(String name, Path place, int stored, int millis) throws Exception {
    Killed killed = killed(process(place, stored), millis);
    amid.addAndGet(killed.isAmid ? 1 : 0);
    String round = name + ", " + killed + ": ";
    try (Database database = Database.connect(Database.embedded(place))) {
      Stock stock = Stock.of(database, Shops.NOON);
      Shelf shelf = Shelf.of(database, Shops.NOON);
      int files = count(database, "SELECT COUNT(*) FROM loaded_file");
      int held = count(database, "SELECT COUNT(*) FROM reservation WHERE state = 'held'");
      int lines = count(database, "SELECT COUNT(*) FROM reservation_line");
      int reserved = shelf.level(SCARCE).orElseThrow().reserved();
      note(
          files == killed.stored || files == killed.stored + 1,
          round + files + " tables are stored");
      note(
          stock.catalogue().parts().equals(whole.get((files - 1) % 2)),
          round + "the articles are not those of the last table");
      note(
          reserved == held && lines == held,
          round + reserved + " pieces are reserved by " + held + " reservations of " + lines);
      note(
          killed.held < 0 || shelf.find("piece " + killed.held).isPresent(),
          round + "the last reservation is lost");
      LoadReport again = stock.load(tables.get(files % 2));
      note(
          again.stored() == ROWS && stock.catalogue().parts().equals(whole.get(files % 2)),
          round + "the next load did not complete");
      return files + 1;
    }
  }

  private void note(boolean isAsWanted, String complaint) {
    if (!isAsWanted) {
      wrong.add(complaint);
    }
  }

  /** What a killed process had told: how many tables are stored, and the last piece that it holds. */
  private record Killed(int stored, int held, boolean isAmid, int afterMillis) {}

  private Process process(Path place, int stored) throws Exception {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xshare:auto",
            "-cp",
            System.getProperty("java.class.path"),
            LoadUntilKilled.class.getName(),
            place.toString(),
            tables.get(0).toString(),
            tables.get(1).toString(),
            String.valueOf(stored))
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static Killed killed(Process process, int millis) throws Exception {
    try (BufferedReader out = new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      String first = out.readLine();
      assertThat(first).as("the process began to load").startsWith("stored ");
      int stored = Integer.parseInt(first.substring(7));
      int held = -1;
      boolean isAmid = false;
      Thread.sleep(millis);
      process.toHandle().destroyForcibly(); // unlike that of the process, it keeps what was printed
      assertThat(process.waitFor(10, TimeUnit.MINUTES)).isTrue();
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        isAmid = line.startsWith("held ");
        if (isAmid) {
          held = Integer.parseInt(line.substring(5));
        } else {
          stored = Integer.parseInt(line.substring(7));
        }
      }
      return new Killed(stored, held, isAmid, millis);
    }
  }

  private static int count(Database database, String query) throws Exception {
    return database.read(connection -> {
      try (PreparedStatement count = connection.prepareStatement(query);
          ResultSet row = count.executeQuery()) {
        row.next();
        return row.getInt(1);
      }
    });
  }

  private static String table(String price, String takes, String end) {
    StringBuilder table = new StringBuilder(Shops.HEADING);
    for (int i = 0; i < ROWS; i++) {
      table.append("socket,K-%d,Socket %d,%s,1000,%s,%s,Cv 1.4,16 bar(g)\n"
          .formatted(i, i, price, takes, end));
    }
    return table.toString();
  }
}
