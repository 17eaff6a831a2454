package org.airfit.counter;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import org.airfit.files.Json;

/** Somebody who asks a service. */
final class Till {

  private static final HttpClient CLIENT =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  /** Ends what would hang for ever, and is far from what anything takes: no test fails because a machine is slow. */
  static final Duration HANGS = Duration.ofMinutes(10);

  private final int port;

  Till(int port) {
    this.port = port;
  }

  HttpRequest.Builder to(String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)).timeout(HANGS);
  }

  HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
    return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
  }

  /** Asks again while all places are taken: the first answer that is another. */
  HttpResponse<String> postWhenFree(String path, String body) throws Exception {
    long end = System.nanoTime() + HANGS.toNanos();
    HttpResponse<String> answer = post(path, body);
    while (answer.statusCode() == 503 && System.nanoTime() < end) {
      Thread.sleep(20);
      answer = post(path, body);
    }
    return answer;
  }

  HttpResponse<String> get(String path) throws Exception {
    return send(to(path).GET());
  }

  HttpResponse<String> post(String path, String body) throws Exception {
    return send(to(path)
        .header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  HttpResponse<String> post(String path, Map<String, Object> body) throws Exception {
    return post(path, Json.write(body));
  }

  static Map<String, Object> object(HttpResponse<String> answer) throws Exception {
    Map<String, Object> object = new LinkedHashMap<>();
    ((Map<?, ?>) Json.read("answer", answer.body()))
        .forEach((name, value) -> object.put(String.valueOf(name), value));
    return object;
  }
}
