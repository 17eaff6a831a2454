package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Who may ask, how much, how long. */
class GuardTest {

  private static final Map<String, Object> DONE = Map.of("done", true);

  private static CounterService service(Settings settings, Answering answers) throws Exception {
    return CounterService.start(settings, answers);
  }

  private static Settings limited(int atOnce, int answerMillis, int bodyMillis) {
    return Settings.usual()
        .limitedTo(atOnce, Duration.ofMillis(answerMillis), Duration.ofMillis(bodyMillis));
  }

  @Test
  void a_hundred_bodies_that_never_come_keep_nobody_waiting() throws Exception {
    int hour = 3_600_000;
    try (CounterService service = service(
        limited(2, 10_000, hour), (endpoint, word, body) -> new Answering.Answer(200, DONE))) {
      Till till = new Till(service.port());
      List<Socket> halves = halves(service, 100);
      try {
        for (int i = 0; i < 20; i++) {
          assertThat(till.post("/mating", "{}").statusCode()).isEqualTo(200);
        }
        for (Socket socket : halves) {
          assertThat(socket.getInputStream().available())
              .as("none is given up yet")
              .isZero();
        }
      } finally {
        for (Socket socket : halves) {
          socket.close();
        }
      }
    }
  }

  /** Connections whose bodies never come. */
  private static List<Socket> halves(CounterService service, int count) throws Exception {
    List<Socket> halves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port());
      halves.add(socket);
      socket.getOutputStream().write(head("Content-Length: 1000"));
      socket.getOutputStream().write('{');
    }
    return halves;
  }

  @Test
  void a_body_that_never_comes_is_given_up() throws Exception {
    try (CounterService service = service(
        limited(2, 10_000, 3_000), (endpoint, word, body) -> new Answering.Answer(200, DONE))) {
      Till till = new Till(service.port());
      List<Socket> halves = halves(service, 100);
      try {
        for (Socket socket : halves) {
          socket.setSoTimeout((int) Till.HANGS.toMillis());
          BufferedReader answer = new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
          assertThat(answer.readLine()).startsWith("HTTP/1.1 408");
          String last = "";
          for (String line = answer.readLine(); line != null; line = answer.readLine()) {
            last = line; // the server closes the connection behind the answer
          }
          assertThat(last).contains("The body did not come within 3 s; send it again.");
        }
      } finally {
        for (Socket socket : halves) {
          socket.close();
        }
      }
      assertThat(till.post("/mating", "{}").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void a_body_that_drips_is_given_up_too() throws Exception {
    try (CounterService service = service(
            limited(2, 10_000, 800), (endpoint, word, body) -> new Answering.Answer(200, DONE));
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port())) {
      socket.getOutputStream().write(head("Transfer-Encoding: chunked"));
      for (int i = 0; i < 6; i++) {
        socket.getOutputStream().write("1\r\n{\r\n".getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        Thread.sleep(100);
      }
      socket.setSoTimeout((int) Till.HANGS.toMillis());
      assertThat(new BufferedReader(
                  new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8))
              .readLine())
          .startsWith("HTTP/1.1 408");
    }
  }

  @Test
  void what_takes_too_long_is_told_so_and_who_finds_all_busy_is_sent_away() throws Exception {
    CountDownLatch end = new CountDownLatch(1);
    CountDownLatch begun = new CountDownLatch(2);
    try (CounterService service = service(limited(2, 1_500, 5_000), (endpoint, word, body) -> {
      if (endpoint == Endpoint.MATING) {
        begun.countDown();
        await(end);
      }
      return new Answering.Answer(200, DONE);
    })) {
      Till till = new Till(service.port());
      List<CompletableFuture<HttpResponse<String>>> slow = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        slow.add(CompletableFuture.supplyAsync(() -> posted(till, "/mating")));
      }
      assertThat(begun.await(Till.HANGS.toMinutes(), TimeUnit.MINUTES)).isTrue();
      HttpResponse<String> busy = till.post("/run", "{}");
      assertThat(busy.statusCode()).isEqualTo(503);
      assertThat(busy.headers().firstValue("Retry-After")).contains("1");
      assertThat(busy.body()).contains("urn:airfit:busy");
      // What only looks things up has threads of its own.
      assertThat(till.get("/health").statusCode()).isEqualTo(200);
      assertThat(till.get("/metrics").body()).contains("airfit_computing 2\n");
      for (CompletableFuture<HttpResponse<String>> each : slow) {
        HttpResponse<String> answer = each.get(Till.HANGS.toMinutes(), TimeUnit.MINUTES);
        assertThat(answer.statusCode()).isEqualTo(503);
        assertThat(answer.body())
            .contains("urn:airfit:too-slow", "The answer was not ready within 1500 ms");
      }
      assertThat(till.post("/run", "{}").statusCode())
          .as("what does not heed that it is given up keeps its place")
          .isEqualTo(503);
      end.countDown();
      assertThat(till.postWhenFree("/run", "{}").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void what_is_given_up_is_interrupted_and_what_comes_behind_it_is_not() throws Exception {
    CountDownLatch interrupted = new CountDownLatch(1);
    try (CounterService service = service(limited(1, 500, 5_000), (endpoint, word, body) -> {
      if (endpoint == Endpoint.MATING) {
        try {
          Thread.sleep(2 * Till.HANGS.toMillis());
        } catch (InterruptedException e) {
          interrupted.countDown();
        }
      }
      return new Answering.Answer(200, Map.of("isInterrupted", Thread.interrupted()));
    })) {
      Till till = new Till(service.port());
      assertThat(till.post("/mating", "{}").body())
          .contains(
              "The answer was not ready within 500 ms and was given up; ask for less: fewer parts to choose,",
              "a catalogue of fewer articles");
      assertThat(interrupted.await(Till.HANGS.toMinutes(), TimeUnit.MINUTES)).isTrue();
      assertThat(till.postWhenFree("/run", "{}").body()).isEqualTo("{\"isInterrupted\":false}");
    }
  }

  @Test
  void what_is_being_answered_when_it_stops_is_answered() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CompletableFuture<HttpResponse<String>> answer;
    try (CounterService service = service(limited(2, 10_000, 5_000), (endpoint, word, body) -> {
      begun.countDown();
      sleep(700);
      return new Answering.Answer(200, DONE);
    })) {
      Till till = new Till(service.port());
      answer = CompletableFuture.supplyAsync(() -> posted(till, "/run"));
      assertThat(begun.await(Till.HANGS.toMinutes(), TimeUnit.MINUTES)).isTrue();
    }
    assertThat(answer.get(Till.HANGS.toMinutes(), TimeUnit.MINUTES).statusCode())
        .isEqualTo(200);
  }

  @Test
  void a_fault_is_told_without_its_cause() throws Exception {
    java.util.logging.Logger.getLogger("org.airfit.counter.faults").setUseParentHandlers(false);
    try (CounterService service = service(limited(2, 10_000, 5_000), (endpoint, word, body) -> {
      throw new IllegalStateException("a secret of /the/disk");
    })) {
      HttpResponse<String> answer = new Till(service.port()).post("/run", "{}");
      assertThat(answer.statusCode()).isEqualTo(500);
      assertThat(answer.body()).contains("it is noted").doesNotContain("secret", "disk", "Illegal");
    }
  }

  @Test
  void a_page_of_another_name_is_refused_without_a_token() throws Exception {
    try (CounterService service =
            service(Settings.usual(), (endpoint, word, body) -> new Answering.Answer(200, DONE));
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port())) {
      socket
          .getOutputStream()
          .write("GET /health HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n"
              .getBytes(StandardCharsets.US_ASCII));
      assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
          .startsWith("HTTP/1.1 403")
          .contains("urn:airfit:host");
    }
  }

  @Test
  void with_a_token_only_who_shows_it_is_answered() throws Exception {
    Settings settings = Settings.usual().at("127.0.0.1", 0, Optional.of("0123456789abcdef"));
    try (CounterService service = service(
        settings,
        (endpoint, word, body) -> new Answering.Answer(
            200, endpoint == Endpoint.HEALTH ? Map.of("status", "up", "stockVersion", 7) : DONE))) {
      Till till = new Till(service.port());
      // First, as the server remembers what a header of this connection said.
      for (String scheme : List.of("bearer ", "BEARER ")) {
        assertThat(till.send(till.to("/stock/catalogue.json")
                    .header("Authorization", scheme + "0123456789abcdef"))
                .statusCode())
            .isEqualTo(200);
      }
      HttpResponse<String> health = till.get("/health");
      assertThat(health.statusCode()).as("open to a probe without a token").isEqualTo(200);
      assertThat(health.body()).as("which is told nothing else").isEqualTo("{\"status\":\"up\"}");
      assertThat(till.send(till.to("/health").header("Authorization", "Bearer 0123456789abcdef"))
              .body())
          .contains("\"stockVersion\":7");
      HttpResponse<String> refused = till.get("/stock/catalogue.json");
      assertThat(refused.statusCode()).isEqualTo(401);
      assertThat(refused.headers().firstValue("WWW-Authenticate")).contains("Bearer");
      for (String wrong : List.of(
          "Bearer 0123456789abcdeg",
          "Bearer 0123456789ABCDEF",
          "Bearer 0123456789abcde",
          "Bearer ",
          "Basic 0123456789abcdef",
          "0123456789abcdef")) {
        assertThat(till.send(till.to("/stock/catalogue.json").header("Authorization", wrong))
                .statusCode())
            .isEqualTo(401);
      }
      assertThat(till.send(till.to("/stock/catalogue.json")
                  .header("Authorization", "Bearer 0123456789abcdef"))
              .statusCode())
          .isEqualTo(200);
    }
  }

  @Test
  void settings_refuse_what_would_let_others_in() {
    assertThatThrownBy(() -> Settings.usual().at("0.0.0.0", 8080, Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("token must be told where others can reach the service");
    assertThatThrownBy(() -> Settings.usual().at("0.0.0.0", 8080, Optional.of("short")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("at least 16 letters");
    assertThatThrownBy(() -> Settings.usual().at("127.0.0.1", 65536, Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("port must be in [0, 65535], was 65536");
    assertThatThrownBy(() -> limited(0, 1, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("[1, 1000]");
  }

  /** The head of a question whose body is still to come. */
  private static byte[] head(String length) {
    String head = "POST /mating HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n";
    return (head + length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
  }

  private static HttpResponse<String> posted(Till till, String path) {
    try {
      return till.post(path, "{}");
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Waits whether it is interrupted or not. */
  private static void await(CountDownLatch latch) {
    while (true) {
      try {
        latch.await();
        return;
      } catch (InterruptedException e) {
        // it goes on
      }
    }
  }

  private static void sleep(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
