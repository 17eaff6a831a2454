package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What somebody sends who means no good: refused with a word or two, logged once, and nothing of the inside told, while
 * a good caller goes on being answered. It prints a table of what was answered.
 */
class HostileTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** So much is told to whoever is refused at most [bytes]. */
  private static final int SHORT = 3500;

  private static final int BODY_MILLIS = 3000;

  /** What only somebody inside knows: names of classes, of libraries, of folders. */
  private static final Pattern INSIDE = Pattern.compile("[Ee]xception|\\bat [a-z]+\\.[a-z]|"
      + "\\b(org|com|java|jdk)\\.[a-z]+\\.|[jJ]etty|[jJ]ackson|Hikari|\\bh2\\b|SQLSTATE|\\.java\\b|"
      + "/(work|tmp|home|root|usr|var|opt)/|[A-Z]:\\\\");

  private static final String SQL = "x'); DROP TABLE article; --";
  private static final String SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(1)>";

  @TempDir
  static Path folder;

  private static Database database;
  private static CounterService service;
  private static final List<String> LOGGED = new CopyOnWriteArrayList<>();
  private static final List<String> FAULTS = new CopyOnWriteArrayList<>();
  private static final Logger LOGGER = Logger.getLogger("org.airfit.counter");
  private static final Handler NOTES = new Handler() {
    @Override
    public void publish(LogRecord entry) {
      (entry.getLoggerName().endsWith("access") ? LOGGED : FAULTS).add(entry.getMessage());
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}
  };

  private final StringBuilder table = new StringBuilder("""
      | what | questions | status | longest | most sent back |
      | --- | --- | --- | --- | --- |
      """);
  private final AtomicBoolean isOver = new AtomicBoolean();
  private final AtomicLong good = new AtomicLong();
  private final AtomicLong longest = new AtomicLong();
  private final List<String> bad = new CopyOnWriteArrayList<>();

  @BeforeAll
  static void start() throws Exception {
    Path file = Path.of("..", "jobs", "boatyard", "catalogue.json");
    database = Database.open(Database.embedded(folder.resolve("stock")));
    Stock stock = Shops.stocked(database, file);
    stock.load(
        "more.csv", new StringReader("kind,id,name,price,quantity\ndrain,DR-7,Drain,4,500\n"));
    service = CounterService.start(
        Settings.usual().limitedTo(8, Duration.ofSeconds(20), Duration.ofMillis(BODY_MILLIS)),
        stock,
        Shelf.of(database, Clock.systemUTC()));
    LOGGER.addHandler(NOTES);
    LOGGER.setUseParentHandlers(false);
  }

  @AfterAll
  static void stop() throws Exception {
    LOGGER.removeHandler(NOTES);
    LOGGER.setUseParentHandlers(true);
    service.close();
    database.close();
  }

  @AfterEach
  void print() {
    System.out.println(table);
  }

  /** What came back: no status where the connection was closed without a word. */
  private record Back(int status, String head, String body, int bytes, long millis) {}

  private static Back send(byte[] question) throws IOException {
    long began = System.nanoTime();
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port())) {
      socket.setSoTimeout((int) Till.HANGS.toMillis());
      ByteArrayOutputStream told = new ByteArrayOutputStream();
      try {
        socket.getOutputStream().write(question);
        socket.getOutputStream().flush();
      } catch (SocketException e) {
        told.reset(); // closed amid the question; there may be an answer all the same
      }
      try {
        InputStream in = socket.getInputStream();
        byte[] some = new byte[8192];
        for (int read = in.read(some); read >= 0; read = in.read(some)) {
          told.write(some, 0, read);
        }
      } catch (SocketException e) {
        assertThat(e).hasMessageContaining("reset");
      }
      String answer = told.toString(StandardCharsets.UTF_8);
      int end = answer.indexOf("\r\n\r\n");
      String head = end < 0 ? answer : answer.substring(0, end);
      return new Back(
          head.startsWith("HTTP/1.1 ") ? Integer.parseInt(head.substring(9, 12)) : 0,
          head,
          end < 0 ? "" : answer.substring(end + 4),
          told.size(),
          (System.nanoTime() - began) / 1_000_000);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] get(String target, String... headers) {
    return bytes("GET " + target + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
        + String.join("", headers) + "\r\n");
  }

  private static byte[] post(String path, byte[] body, String... headers) {
    byte[] head = bytes("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
        + (headers.length == 0 ? "Content-Type: application/json\r\n" : String.join("", headers))
        + "Content-Length: " + body.length + "\r\n\r\n");
    byte[] all = Arrays.copyOf(head, head.length + body.length);
    System.arraycopy(body, 0, all, head.length, body.length);
    return all;
  }

  private static byte[] post(String path, String body, String... headers) {
    return post(path, bytes(body), headers);
  }

  /** Sends questions of one kind, each of which must be answered with one of these statuses. */
  private void row(String what, List<Integer> statuses, byte[]... questions) throws Exception {
    Map<Integer, Integer> counts = new TreeMap<>();
    long slowest = 0;
    int most = 0;
    for (byte[] question : questions) {
      int before = logged();
      Back back = send(question);
      String shown = what + ": "
          + new String(question, 0, Math.min(300, question.length), StandardCharsets.UTF_8);
      assertThat(back.status()).as(shown + "\n" + back.head() + back.body()).isIn(statuses);
      counts.merge(back.status(), 1, Integer::sum);
      slowest = Math.max(slowest, back.millis());
      most = Math.max(most, back.bytes());
      if (back.status() != 200) {
        assertThat(back.bytes()).as(shown).isLessThan(SHORT);
      }
      String told = (back.head() + back.body()).replace(SQL, "").replace(SCRIPT, "");
      assertThat(INSIDE.matcher(told).find()).as(shown + "\n" + told).isFalse();
      if (back.status() != 0 && !back.body().isEmpty()) {
        assertThat(back.head())
            .containsPattern("(?i)content-type: application/(problem\\+)?json")
            .containsIgnoringCase("x-content-type-options: nosniff");
      }
      assertThat(loggedAfter(before, back.status() == 0 ? 0 : 1))
          .as(shown + ": logged")
          .isTrue();
    }
    table.append("| ").append(what).append(" | ").append(questions.length).append(" | ");
    counts.forEach((status, count) -> table
        .append(status == 0 ? "closed" : String.valueOf(status))
        .append(counts.size() > 1 ? " (" + count + ") " : " "));
    table.append("| ").append(slowest).append(" ms | ").append(most).append(" B |\n");
  }

  /** Lines of what is not the good caller's. */
  private static int logged() {
    return (int) LOGGED.stream().filter(line -> !line.startsWith("health ")).count();
  }

  /** Whether exactly so many lines more are there soon, and no further one. */
  private static boolean loggedAfter(int before, int more) throws InterruptedException {
    for (int i = 0; i < 200 && logged() < before + more; i++) {
      Thread.sleep(5);
    }
    return logged() == before + more || (more == 0 && logged() == before + 1);
  }

  private Thread goodCaller() {
    Till till = new Till(service.port());
    Thread caller = new Thread(() -> {
      while (!isOver.get()) {
        try {
          long began = System.nanoTime();
          int status = till.get("/health").statusCode();
          if (status != 200) {
            bad.add("health " + status);
          }
          good.incrementAndGet();
          longest.accumulateAndGet((System.nanoTime() - began) / 1_000_000, Math::max);
          Thread.sleep(10);
        } catch (Exception e) {
          bad.add(String.valueOf(e));
        }
      }
    });
    caller.start();
    return caller;
  }

  @Test
  void it_is_refused_cheaply_logged_once_and_nothing_leaks() throws Exception {
    Thread caller = goodCaller();
    try {
      numbersAndForms();
      bodies();
      paths();
      texts("SQL in every text", SQL);
      texts("script in every text", SCRIPT);
      replay();
      headersAndMethods();
      slowBodies();
    } finally {
      isOver.set(true);
      caller.join();
    }
    table
        .append("\na good caller meanwhile: ")
        .append(good.get())
        .append(" answers, the longest ")
        .append(longest.get())
        .append(" ms\n");
    assertThat(bad).isEmpty();
    assertThat(good.get()).isGreaterThan(50);
    assertThat(FAULTS).as("nothing of it is a fault of the service").isEmpty();
    assertThat(LOGGED)
        .allMatch(line -> line.matches("[a-z]+ [0-9]{3} [0-9]+ ms [0-9]+ in [0-9]+ out"));
    assertThat(Till.object(new Till(service.port()).get("/stock/DR-7")))
        .containsEntry("quantity", 499)
        .containsEntry("reserved", 0);
  }

  private void numbersAndForms() throws Exception {
    String digits = "9".repeat(400);
    row(
        "huge numbers: 1e999, 400 digits",
        List.of(400, 422),
        post("/select", "{\"most\": 1e999}"),
        post("/select", "{\"most\": " + digits + "}"),
        post("/select", "{\"most\": -1e999}"),
        post("/run", "{\"supply\": {\"pressure\": [1, {\"a\": 1E400}]}}"),
        post("/reservations", "{\"reference\": \"a\", \"pieces\": {\"DR-7\": " + digits + "}}"),
        post("/reservations", "{\"reference\": \"a\", \"pieces\": {\"DR-7\": 99999999999}}"),
        post(
            "/run",
            "{\"supply\": \"" + digits + " psig\", \"elements\": [{}], \"flow\": \"1 scfm\"}"),
        post("/run", "{\"supply\": \"1e999 psig\", \"elements\": [{}], \"flow\": \"1 scfm\"}"));
    row(
        "deep JSON: 33, 10000, 500000 levels",
        List.of(400),
        post("/select", "{\"job\": " + "[".repeat(33) + "]".repeat(33) + "}"),
        post("/select", "{\"a\":".repeat(10_000) + "1" + "}".repeat(10_000)),
        post("/select", "[".repeat(500_000)));
    row(
        "long JSON: a list of 200000, 60000 fields, a text of 1 MB",
        List.of(422),
        post("/select", "{\"job\": [" + "1,".repeat(199_999) + "1]}"),
        post("/mating", "{\"one\": {" + many(60_000) + "}, \"other\": \"x\"}"),
        post("/mating", "{\"one\": \"" + "a".repeat(1_000_000) + "\", \"other\": \"x\"}"),
        post("/interview", "{\"job\": {" + many(60_000) + "}, \"answers\": [1]}"));
    row(
        "duplicate keys, no JSON, two values, no object",
        List.of(400),
        post("/mating", "{\"one\": \"a\", \"one\": \"b\"}"),
        post("/mating", "{one: 'a'}"),
        post("/mating", "{} {}"),
        post("/mating", "[]"),
        post("/mating", "null"),
        post("/mating", "{\"one\": NaN}"),
        post("/mating", ""));
    row(
        "invalid UTF-8, UTF-16, NUL",
        List.of(400),
        post("/mating", new byte[] {'{', '"', (byte) 0xc3, '"', ':', '1', '}'}),
        post("/mating", new byte[] {'{', '"', (byte) 0xc0, (byte) 0xae, '"', ':', '1', '}'}),
        post(
            "/mating",
            new byte[] {'{', '"', (byte) 0xed, (byte) 0xa0, (byte) 0x80, '"', ':', '1', '}'}),
        post("/mating", new byte[] {'{', 0, '}'}),
        post("/mating", new byte[] {'{', '"', 0, '"', ':', '1', '}'}));
  }

  private static String many(int fields) {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < fields; i++) {
      all.append(i == 0 ? "" : ",").append("\"f").append(i).append("\":1");
    }
    return all.toString();
  }

  private void bodies() throws Exception {
    row("10 MB told", List.of(413), head("/mating", "Content-Length: 10485760"));
    row("10 MB sent", List.of(413, 0), post("/mating", new byte[10 << 20]));
    byte[] chunk = new byte[2 << 20];
    byte[] chunked = Arrays.copyOf(
        bytes(new String(head("/mating", "Transfer-Encoding: chunked"), StandardCharsets.UTF_8)
            + Integer.toHexString(chunk.length) + "\r\n"),
        300 + chunk.length);
    row("2 MB sent in chunks", List.of(413, 400, 0), chunked);
    row(
        "10 MB told, waiting to be asked for them",
        List.of(413),
        head("/mating", "Expect: 100-continue\r\nContent-Length: 10485760"));
    row(
        "wrong content types",
        List.of(415),
        post("/mating", "{}", "Content-Type: text/plain\r\n"),
        post("/mating", "{}", "Content-Type: application/x-www-form-urlencoded\r\n"),
        post("/mating", "{}", "Content-Type: multipart/form-data; boundary=x\r\n"),
        post("/mating", "{}", "Content-Type: application/json; charset=iso-8859-1\r\n"),
        post("/mating", "{}", "Content-Type: application/jsonp\r\n"),
        post("/mating", "{}", "Content-Type: application/json\r\nContent-Encoding: gzip\r\n"),
        post("/mating", "{}", "X: y\r\n"));
  }

  private static byte[] head(String path, String headers) {
    return bytes("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
        + "Content-Type: application/json\r\n" + headers + "\r\n\r\n");
  }

  private void paths() throws Exception {
    row(
        "path tricks",
        List.of(400, 404),
        get("/../../etc/passwd"),
        get("/%2e%2e/%2e%2e/etc/passwd"),
        get("/..%2f..%2fetc/passwd"),
        get("/stock/../metrics"),
        get("/stock/..;/metrics"),
        get("/stock/a%2Fb"),
        get("/stock/%00"),
        get("/stock/\0"),
        get("/stock/%c0%ae%c0%ae"),
        get("/stock/..%5c..%5cwindows"),
        get("/stock//DR-7"),
        get("//stock/DR-7"),
        get("//evil.example/stock"),
        get("/stock/" + "a".repeat(5000)),
        get("/stock/DR-7/../DR-7"),
        get("/%"),
        get("/stock/%zz"),
        get("/openapi.json/"),
        get("/.git/config"),
        get("/WEB-INF/web.xml"),
        get("stock"));
    row("a path of 9000 letters", List.of(414), get("/stock/" + "a".repeat(9000)));
  }

  private static Map<String, Object> good() throws Exception {
    Map<String, Object> good = new LinkedHashMap<>();
    good.put(
        "/identify",
        Map.of(
            "readings", Map.of("tip diameter", "11.93 mm"),
            "caliper", "digital caliper 0.01 mm",
            "worn", "0.1 mm",
            "set", "record,name\nset,x\n",
            "units", "SI",
            "medium", "compressed air",
            "profilesInUse", List.of("gannet")));
    good.put("/mating", Map.of("one", "1/4 NPT male", "other", "G 1/4 female"));
    good.put(
        "/run",
        Map.of(
            "supply", "90 psig",
            "atmosphere", "1.013 bar(a)",
            "flow", "20 scfm",
            "needed", "70 psig",
            "units", "US",
            "elements",
                List.of(
                    Map.of("part", "S-10"),
                    Map.of("name", "hose", "bore", "3/8 in", "length", "5 m", "wall", "hose"))));
    Map<String, Object> job =
        Disk.fields(Path.of("..", "jobs", "boatyard", "weak-sander.json"), new ArrayList<>());
    job.put("catalogue", Stock.FILE);
    good.put("/select", Map.of("job", job));
    good.put(
        "/interview",
        Map.of(
            "job",
            Map.of("job", "a", "customer", "b"),
            "answers",
            List.of(Map.of("topic", "medium", "answer", "compressed air"))));
    good.put("/network", Map.of("network", "record,name\nnetwork,x\n"));
    good.put("/reservations", Map.of("reference", "r", "pieces", Map.of("NONE", 1)));
    return good;
  }

  /** Each good question with one of its texts, or of its names, in turn exchanged for another. */
  private static List<byte[]> exchanged(String evil) throws Exception {
    List<byte[]> questions = new ArrayList<>();
    for (Map.Entry<String, Object> each : good().entrySet()) {
      String json = MAPPER.writeValueAsString(each.getValue());
      String told = MAPPER.writeValueAsString(evil);
      List<Integer> begins = new ArrayList<>();
      int at = json.indexOf('"');
      while (at >= 0) {
        begins.add(at);
        int end = at + 1;
        while (json.charAt(end) != '"') {
          end += json.charAt(end) == '\\' ? 2 : 1;
        }
        questions.add(post(each.getKey(), json.substring(0, at) + told + json.substring(end + 1)));
        at = json.indexOf('"', end + 1);
      }
      assertThat(begins).as(each.getKey()).isNotEmpty();
    }
    return questions;
  }

  private void texts(String what, String evil) throws Exception {
    List<byte[]> questions = exchanged(evil);
    String coded = java.net.URLEncoder.encode(evil, StandardCharsets.UTF_8).replace("+", "%20");
    questions.add(get("/stock/" + coded.replace("%2F", "")));
    questions.add(get("/reservations/" + coded.replace("%2F", "")));
    questions.add(post("/reservations/" + coded.replace("%2F", "") + "/sell", "{}"));
    // A job may be called so; it is told back as a text of JSON.
    row(what, List.of(200, 201, 400, 404, 409, 422), questions.toArray(new byte[0][]));
  }

  private void replay() throws Exception {
    String same = "{\"reference\": \"replayed\", \"pieces\": {\"DR-7\": 1}}";
    row("a reservation", List.of(201), post("/reservations", same));
    byte[][] again = new byte[20][];
    Arrays.fill(again, post("/reservations", same));
    row("the same again", List.of(200), again);
    row(
        "its reference for other pieces",
        List.of(409),
        post("/reservations", same.replace(": 1", ": 2")));
    Arrays.fill(again, post("/reservations/replayed/sell", "{}"));
    row("sold again and again", List.of(200), again);
    row("released when sold", List.of(409), post("/reservations/replayed/release", "{}"));
  }

  private void headersAndMethods() throws Exception {
    List<byte[]> methods = new ArrayList<>();
    for (String method : List.of("PUT", "DELETE", "PATCH", "TRACE", "OPTIONS", "get", "FOO")) {
      methods.add(
          bytes(method + " /stock/DR-7 HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"));
    }
    methods.add(post("/stock/DR-7", "{}"));
    methods.add(get("/mating"));
    row("wrong methods", List.of(405, 400, 501), methods.toArray(new byte[0][]));
    row(
        "wrong Host, none, two",
        List.of(403, 400),
        bytes("GET /health HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n"),
        bytes("GET /health HTTP/1.1\r\nConnection: close\r\n\r\n"),
        bytes("GET /health HTTP/1.1\r\nHost: a\r\nHost: localhost\r\nConnection: close\r\n\r\n"),
        bytes(
            "GET http://rebound.example/health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"),
        bytes(
            "GET /health HTTP/1.1\r\nHost: localhost@rebound.example\r\nConnection: close\r\n\r\n"),
        bytes("GET /health HTTP/1.1\r\nHost: \r\nConnection: close\r\n\r\n"));
    row(
        "headers: 10000, one of 1 MB, one of 9 kB",
        List.of(431, 0),
        get("/health", "X: y\r\n".repeat(10_000)),
        get("/health", "X: " + "y".repeat(1 << 20) + "\r\n"),
        get("/health", "X: " + "y".repeat(9000) + "\r\n"));
    row(
        "two lengths, length and chunks, a wrong chunk, no HTTP",
        List.of(400, 426, 501, 505, 0),
        head("/mating", "Content-Length: 2\r\nContent-Length: 3"),
        head("/mating", "Content-Length: 2\r\nTransfer-Encoding: chunked"),
        head("/mating", "Content-Length: -1"),
        head("/mating", "Content-Length: 99999999999999999999"),
        bytes(new String(head("/mating", "Transfer-Encoding: chunked"), StandardCharsets.UTF_8)
            + "zz\r\n{}\r\n0\r\n\r\n"),
        bytes("GET /health\r\n\r\n"),
        bytes("GET /health HTTP/9.9\r\nHost: localhost\r\n\r\n"),
        bytes("PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n"),
        bytes("GET /health HTTP/1.1\r\nHost: localhost\r\nA\0B: c\r\n\r\n"),
        bytes("\u0016\u0003\u0001\u0002\u0000\u0001\u0000\u0001\r\n\r\n"));
  }

  private void slowBodies() throws Exception {
    int before = logged();
    List<Socket> halves = new ArrayList<>();
    long began = System.nanoTime();
    int most = 0;
    try {
      for (int i = 0; i < 100; i++) {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port());
        halves.add(socket);
        socket.getOutputStream().write(head("/select", "Content-Length: 1000"));
        socket.getOutputStream().write('{');
      }
      for (Socket socket : halves) {
        socket.setSoTimeout((int) Till.HANGS.toMillis());
        byte[] told = socket.getInputStream().readAllBytes();
        most = Math.max(most, told.length);
        String answer = new String(told, StandardCharsets.UTF_8);
        assertThat(answer).startsWith("HTTP/1.1 408");
        assertThat(INSIDE.matcher(answer).find()).as(answer).isFalse();
      }
    } finally {
      for (Socket socket : halves) {
        socket.close();
      }
    }
    assertThat(loggedAfter(before, 100)).as("each logged once").isTrue();
    table.append(String.format(
        Locale.ROOT,
        "| 100 bodies half sent, at once | 100 | 408 | %d ms | %d B |%n",
        (System.nanoTime() - began) / 1_000_000,
        most));
  }
}
