package org.airfit.counter;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Many clients ask a service in a process of its own, all at once; every answer is held against the library's. Its
 * arguments, each of which may be left out: clients, seconds, seed. .ci/load starts it.
 */
final class Load {

  private static final int USUAL_CLIENTS = 200;
  private static final int USUAL_SECONDS = 60;
  private static final long USUAL_SEED = 20_261_129L;
  private static final int WARM_UP_SECONDS = 20;
  private static final int EACH = 60;

  private static final Path CATALOGUE = Path.of("..", "jobs", "quay-street", "catalogue.json");

  /** Articles that are reserved and sold; nothing else asks for them, and no job chooses them. */
  private static final int PIECES = 1_000_000;

  private static final int SCARCE = 50;
  private static final String TABLE =
      "kind,id,name,price,quantity\ndrain,LOAD-1,Drain for the load,999,%d\ndrain,LOAD-2,Scarce,999,%d\n";

  /** What is asked how often, of a hundred questions: our own choice, the dear ones least. */
  private static final Map<String, Integer> MIX = Map.of(
      "mating",
      25,
      "identify",
      15,
      "run",
      15,
      "stock",
      15,
      "select",
      8,
      "network",
      4,
      "interview",
      3,
      "reservations",
      15);

  private final ServedShop service;
  private final Map<String, List<LoadCases.Case>> cases = new TreeMap<>();
  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final AtomicInteger marks = new AtomicInteger();
  private final AtomicInteger sold = new AtomicInteger();
  private final AtomicInteger scarce = new AtomicInteger();
  private volatile Tally tally = new Tally();

  private Load(ServedShop service, List<LoadCases.Case> all) {
    this.service = service;
    all.forEach(
        each -> cases.computeIfAbsent(each.kind(), kind -> new ArrayList<>()).add(each));
  }

  /** What came of it. */
  static final class Tally {
    private final Map<String, ConcurrentLinkedQueue<Long>> nanos = new TreeMap<>();
    private final Map<String, AtomicInteger> sentAway = new TreeMap<>();
    private final ConcurrentLinkedQueue<Long> untilAnswered = new ConcurrentLinkedQueue<>();
    private final ConcurrentLinkedQueue<String> wrong = new ConcurrentLinkedQueue<>();

    Tally() {
      MIX.keySet().forEach(kind -> nanos.put(kind, new ConcurrentLinkedQueue<>()));
      List.of("busy", "too-slow", "other").forEach(kind -> sentAway.put(kind, new AtomicInteger()));
    }

    List<String> wrong() {
      return List.copyOf(wrong);
    }

    int answered() {
      return nanos.values().stream().mapToInt(ConcurrentLinkedQueue::size).sum();
    }

    /** Kinds of question that got no answer. */
    List<String> unanswered() {
      return nanos.entrySet().stream()
          .filter(each -> each.getValue().isEmpty())
          .map(Map.Entry::getKey)
          .toList();
    }

    private void print(PrintStream out, double seconds) {
      out.println("| question | answers | p50 | p99 | longest |\n| --- | --- | --- | --- | --- |");
      List<Long> all = new ArrayList<>();
      nanos.forEach((kind, times) -> {
        all.addAll(times);
        row(out, kind, times);
      });
      row(out, "all", all);
      row(out, "until answered, with waiting after a 503", untilAnswered);
      out.printf(
          Locale.ROOT,
          "%.0f answers a second; 503 %s; wrong answers %d%n",
          answered() / seconds,
          sentAway,
          wrong.size());
      wrong.stream().limit(20).forEach(out::println);
    }

    private static void row(PrintStream out, String kind, Iterable<Long> times) {
      List<Long> list = new ArrayList<>();
      times.forEach(list::add);
      long[] sorted = list.stream().mapToLong(Long::longValue).toArray();
      Arrays.sort(sorted);
      out.printf(
          Locale.ROOT,
          "| %s | %d | %s | %s | %s |%n",
          kind,
          sorted.length,
          at(sorted, 0.5),
          at(sorted, 0.99),
          at(sorted, 1.0));
    }

    private static String at(long[] sorted, double share) {
      return sorted.length == 0
          ? "-"
          : String.format(
              Locale.ROOT,
              "%.0f ms",
              sorted[(int) Math.min(sorted.length - 1, sorted.length * share)] / 1e6);
    }
  }

  public static void main(String[] args) throws Exception {
    int clients = args.length > 0 ? Integer.parseInt(args[0]) : USUAL_CLIENTS;
    int seconds = args.length > 1 ? Integer.parseInt(args[1]) : USUAL_SECONDS;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : USUAL_SEED;
    Path folder = Files.createTempDirectory("airfit-load");
    Tally tally = run(folder, clients, seconds, WARM_UP_SECONDS, EACH, seed, System.out);
    System.exit(tally.wrong.isEmpty() && tally.unanswered().isEmpty() ? 0 : 1);
  }

  /** Asks for so long, and tells what came of it; without a warm-up the heap is not looked at. */
  static Tally run(
      Path folder, int clients, int seconds, int warmUp, int each, long seed, PrintStream out)
      throws Exception {
    List<LoadCases.Case> all = LoadCases.of(CATALOGUE, seed, each);
    try (ServedShop service = ServedShop.start(folder, CATALOGUE)) {
      Path table = folder.resolve("load.csv");
      Files.writeString(table, TABLE.formatted(PIECES, SCARCE));
      service.load(table);
      Load load = new Load(service, all);
      out.println(clients + " clients, " + seconds + " s, seed " + seed + ", " + all.size()
          + " questions known, load average before "
          + Files.readString(Path.of("/proc/loadavg")).strip());
      load.ask(clients, warmUp, seed);
      List<String> wrong = load.tally.wrong();
      long before = warmUp == 0 ? 0 : service.heapBytes();
      load.tally = new Tally();
      load.tally.wrong.addAll(wrong);
      long began = System.nanoTime();
      load.ask(clients, seconds, seed + 1);
      double took = (System.nanoTime() - began) / 1e9;
      load.requireStock();
      load.tally.print(out, took);
      if (warmUp > 0) {
        long after = service.heapBytes();
        out.printf(
            Locale.ROOT,
            "heap after GC: %.1f MB after %d s of warm-up, %.1f MB at the end (%+.1f %%)%n",
            before / 1e6,
            warmUp,
            after / 1e6,
            100.0 * (after - before) / before);
      }
      out.println("load average at the end "
          + Files.readString(Path.of("/proc/loadavg")).strip());
      return load.tally;
    }
  }

  private void ask(int clients, int seconds, long seed) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(clients);
    long end = System.nanoTime() + Duration.ofSeconds(seconds).toNanos();
    List<Callable<Boolean>> all = new ArrayList<>();
    for (int i = 0; i < clients; i++) {
      Random random = new Random(seed * 1000 + i);
      all.add(() -> {
        while (System.nanoTime() < end) {
          one(random);
        }
        return true;
      });
    }
    for (Future<Boolean> each : threads.invokeAll(all)) {
      each.get();
    }
    threads.shutdown();
  }

  private void one(Random random) throws Exception {
    int left = random.nextInt(100);
    String kind = "";
    for (Map.Entry<String, Integer> each : new TreeMap<>(MIX).entrySet()) {
      kind = left >= 0 ? each.getKey() : kind;
      left -= each.getValue();
    }
    String mark = String.format(Locale.ROOT, "mark-%07d", marks.incrementAndGet());
    if (kind.equals("reservations")) {
      reserve(random, mark);
      return;
    }
    List<LoadCases.Case> known = Objects.requireNonNull(cases.get(kind), kind);
    LoadCases.Case asked = known.get(random.nextInt(known.size()));
    HttpResponse<String> answer = answered(
        random, kind, asked.path(), asked.body().replace(LoadCases.MARK, mark), asked.isPost());
    if (answer.statusCode() != 200 || !asked.isAnswered(mark, answer.body())) {
      tally.wrong.add(kind + " " + mark + " " + answer.statusCode() + " " + shortly(answer.body())
          + " to " + shortly(asked.body()));
    }
  }

  private static String shortly(String text) {
    return text.substring(0, Math.min(200, text.length()));
  }

  /** Holds a piece, twice by one reference, sells or releases it; and wants one of the few that are there. */
  private void reserve(Random random, String mark) throws Exception {
    String held = "{\"reference\":\"" + mark + "\",\"state\":\"%s\",\"pieces\":{\"LOAD-1\":2}}";
    String wanted = "{\"reference\":\"" + mark + "\",\"pieces\":{\"LOAD-1\":2}}";
    String kind = "reservations";
    expect(
        mark, 201, held.formatted("held"), answered(random, kind, "/reservations", wanted, true));
    expect(
        mark, 200, held.formatted("held"), answered(random, kind, "/reservations", wanted, true));
    boolean isSold = random.nextBoolean();
    HttpResponse<String> ended = answered(
        random, kind, "/reservations/" + mark + (isSold ? "/sell" : "/release"), "{}", true);
    expect(mark, 200, held.formatted(isSold ? "sold" : "released"), ended);
    sold.addAndGet(isSold ? 2 : 0);
    String few = "{\"reference\":\"few " + mark + "\",\"pieces\":{\"LOAD-2\":1}}";
    int status = answered(random, kind, "/reservations", few, true).statusCode();
    scarce.addAndGet(status == 201 ? 1 : 0);
    if (status != 201 && status != 409) {
      tally.wrong.add("reservation " + mark + " of the few: " + status);
    }
  }

  private void expect(String mark, int status, String body, HttpResponse<String> answer)
      throws IOException {
    // Asked again after a 503 that came too late, it may be there already.
    boolean isStatus =
        answer.statusCode() == status || (status == 201 && answer.statusCode() == 200);
    if (!isStatus
        || !LoadCases.MAPPER.readTree(body).equals(LoadCases.MAPPER.readTree(answer.body()))) {
      tally.wrong.add("reservation " + mark + " " + answer.statusCode() + " " + answer.body());
    }
  }

  /** Asks until it is answered. */
  private HttpResponse<String> answered(
      Random random, String kind, String path, String body, boolean isPost) throws Exception {
    long first = System.nanoTime();
    while (true) {
      HttpRequest.Builder request = HttpRequest.newBuilder(
              URI.create("http://127.0.0.1:" + service.port() + path))
          .timeout(Duration.ofSeconds(60));
      if (isPost) {
        request
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body));
      }
      long began = System.nanoTime();
      HttpResponse<String> answer =
          client.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
      if (answer.statusCode() != 503) {
        Objects.requireNonNull(tally.nanos.get(kind), kind).add(System.nanoTime() - began);
        tally.untilAnswered.add(System.nanoTime() - first);
        return answer;
      }
      String told = answer.body();
      String why =
          told.contains(":busy") ? "busy" : told.contains(":too-slow") ? "too-slow" : "other";
      Objects.requireNonNull(tally.sentAway.get(why), why).incrementAndGet();
      Thread.sleep(500 + random.nextInt(1000));
    }
  }

  /** What is left on the shelf is what was not sold; nothing is held; of the few none was sold twice. */
  private void requireStock() throws Exception {
    Map<String, String> wanted = new LinkedHashMap<>();
    wanted.put("LOAD-1", (PIECES - sold.get()) + " 0");
    wanted.put("LOAD-2", SCARCE + " " + scarce.get());
    for (Map.Entry<String, String> each : wanted.entrySet()) {
      var level = LoadCases.MAPPER.readTree(
          answered(new Random(0), "stock", "/stock/" + each.getKey(), "", false).body());
      String told =
          level.path("quantity").asInt() + " " + level.path("reserved").asInt();
      if (!told.equals(each.getValue())) {
        tally.wrong.add(each.getKey() + " has " + told + ", not " + each.getValue());
      }
    }
    if (scarce.get() > SCARCE) {
      tally.wrong.add(scarce + " of " + SCARCE + " pieces were reserved");
    }
  }
}
