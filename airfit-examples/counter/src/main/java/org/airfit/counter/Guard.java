package org.airfit.counter;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Promise;
import org.jspecify.annotations.Nullable;

/**
 * What stands in front of every answer: who may ask, how much, how long.
 *
 * <p>No thread waits for a body: it is taken in as it comes, so that bodies that never come hold nothing but a
 * connection. What computes has threads of its own, as many as may compute at once; who finds all busy is sent away.
 * What takes too long is answered so, and its thread is interrupted, by which its search ends. What asks the database
 * never is: an embedded database closes its file when that happens.
 */
final class Guard extends Handler.Abstract {

  private static final System.Logger ACCESS = System.getLogger("org.airfit.counter.access");
  private static final System.Logger FAULTS = System.getLogger("org.airfit.counter.faults");

  private static final String JSON = "application/json";
  private static final String BEARER = "Bearer ";

  /** A parameter may stand in quotation marks (RFC 9110, section 5.6.6). */
  private static final Set<String> TYPES =
      Set.of(JSON, JSON + ";charset=utf-8", JSON + ";charset=\"utf-8\"");

  /** So many look into the database at once, and so many wait for that; our own choice. */
  private static final int LOOKING = 8;

  private static final int WAITING = 64;

  /** Who finds all busy may ask again after so long [s]; our own choice. */
  private static final String RETRY_AFTER = "1";

  private static final int NANOS_PER_MILLI = 1_000_000;

  private final Settings settings;
  private final Answering answers;
  private final Metrics metrics = new Metrics();
  private final ThreadPoolExecutor computing;
  private final ThreadPoolExecutor looking;
  private final byte[] openApi;
  private final Optional<byte[]> page;

  Guard(Settings settings, Answering answers, byte[] openApi, Optional<byte[]> page) {
    this.settings = settings;
    this.answers = answers;
    this.openApi = openApi.clone();
    this.page = page;
    this.computing = threads("computes", settings.mostAtOnce(), new SynchronousQueue<>());
    this.looking = threads("looks", LOOKING, new ArrayBlockingQueue<>(WAITING));
  }

  private static ThreadPoolExecutor threads(String name, int most, BlockingQueue<Runnable> queue) {
    AtomicInteger count = new AtomicInteger();
    ThreadPoolExecutor threads =
        new ThreadPoolExecutor(most, most, 1, TimeUnit.MINUTES, queue, task -> {
          Thread thread = new Thread(task, name + "-" + count.incrementAndGet());
          thread.setDaemon(true);
          return thread;
        });
    threads.allowCoreThreadTimeOut(true);
    return threads;
  }

  /** Lets no further work begin. */
  void end() {
    computing.shutdown();
    looking.shutdown();
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    Exchange exchange = new Exchange(request, response, callback);
    try {
      exchange.begin();
    } catch (Problem e) {
      exchange.refuse(e);
    }
    return true;
  }

  /** What the server itself refuses, such as a broken line of HTTP or a question while it stops. */
  boolean refusedByServer(Request request, Response response, Callback callback) {
    int status = Math.max(400, response.getStatus());
    Problem problem = status == 503
        ? new Problem(503, "stopping", "The service is stopping; ask again later.")
        : new Problem(
            status,
            "http",
            status < 500
                ? "The question is no HTTP that can be answered here."
                : "Something failed here; it is noted.");
    new Exchange(request, response, callback).refuse(problem);
    return true;
  }

  /** One question and its answer. */
  private final class Exchange {

    private final Request request;
    private final Response response;
    private final Callback callback;
    private final long began = System.nanoTime();
    private String what = "none";

    Exchange(Request request, Response response, Callback callback) {
      this.request = request;
      this.response = response;
      this.callback = callback;
    }

    void begin() throws Problem {
      requireHost();
      requirePlainPath();
      Endpoint.Found found = Endpoint.find(
          request.getMethod(),
          Optional.ofNullable(request.getHttpURI().getPath()).orElse(""));
      Endpoint endpoint = found.endpoint();
      what = endpoint.word();
      if (endpoint != Endpoint.PAGE && endpoint != Endpoint.HEALTH) {
        requireToken();
      }
      if (endpoint.work() == Endpoint.Work.NONE) {
        tell(endpoint);
      } else if (endpoint.isPost()) {
        requireJson();
        CompletableFuture<byte[]> body = new CompletableFuture<>();
        Content.Source.asByteArrayAsync(
            request, Bodies.MOST_BYTES, Promise.Invocable.toPromise(body));
        var unused = body.orTimeout(settings.longestBody().toMillis(), TimeUnit.MILLISECONDS)
            .handle((bytes, failure) -> {
              if (failure != null) {
                refuse(ofBody(failure));
              } else {
                work(found, bytes);
              }
              return true;
            })
            .exceptionally(this::broken);
      } else {
        work(found, new byte[0]);
      }
    }

    /** A page of another site that calls itself by a name of its own must not reach a service without a token. */
    private void requireHost() throws Problem {
      String host = Request.getServerName(request);
      if (settings.token().isEmpty()
          && !List.of("localhost", "127.0.0.1", "[::1]", "::1", settings.address())
              .contains(host.toLowerCase(Locale.ROOT))) {
        throw new Problem(
            403, "host", "This service is asked by the name localhost or 127.0.0.1 only.");
      }
    }

    /** A proxy in front must not think a path another one than it is here. */
    private void requirePlainPath() throws Problem {
      String path = Optional.ofNullable(request.getHttpURI().getPath()).orElse("");
      for (String step : path.split("/", -1)) {
        if (step.equals(".") || step.equals("..")) {
          throw new Problem(400, "path", "The path must not hold the steps . and .. itself.");
        }
      }
    }

    private void requireToken() throws Problem {
      if (!isTrusted()) {
        throw new Problem(
            401, "token", "Show the token of this service in the header Authorization: Bearer.");
      }
    }

    /** Whether the token is shown, or none is wanted. */
    private boolean isTrusted() {
      if (settings.token().isEmpty()) {
        return true;
      }
      String shown = Optional.ofNullable(request.getHeaders().get(HttpHeader.AUTHORIZATION))
          .orElse("");
      if (!shown.regionMatches(true, 0, BEARER, 0, BEARER.length())) { // RFC 9110, section 11.1
        return false;
      }
      byte[] wanted = settings.token().get().getBytes(StandardCharsets.UTF_8);
      return MessageDigest.isEqual(
          wanted, shown.substring(BEARER.length()).getBytes(StandardCharsets.UTF_8));
    }

    /** A probe that shows no token is told whether all is well, and nothing else. */
    private Map<String, Object> tellable(Endpoint endpoint, Map<String, Object> answer) {
      return endpoint != Endpoint.HEALTH || isTrusted()
          ? answer
          : Map.of("status", String.valueOf(answer.get("status")));
    }

    private void requireJson() throws Problem {
      HttpFields headers = request.getHeaders();
      String type = Optional.ofNullable(headers.get(HttpHeader.CONTENT_TYPE))
          .orElse("")
          .toLowerCase(Locale.ROOT)
          .replace(" ", "");
      if (!TYPES.contains(type)) {
        throw new Problem(415, "content-type", "The body must be of type " + JSON + ".")
            .with("accepted", JSON);
      }
      if (headers.contains(HttpHeader.CONTENT_ENCODING)) {
        throw new Problem(415, "content-encoding", "The body must not be compressed.");
      }
      if (headers.getLongField(HttpHeader.CONTENT_LENGTH) > Bodies.MOST_BYTES) {
        throw tooLong();
      }
    }

    private Problem tooLong() {
      return new Problem(
          413, "too-long", "The body may have at most " + Bodies.MOST_BYTES + " bytes.");
    }

    private Problem ofBody(Throwable failure) {
      if (failure instanceof TimeoutException) {
        return new Problem(
            408,
            "slow-body",
            "The body did not come within " + inWords(settings.longestBody()) + "; send it again.");
      }
      return Request.getContentBytesRead(request) > Bodies.MOST_BYTES
          ? tooLong()
          : new Problem(400, "broken-body", "The body ended before it was whole.");
    }

    /** Has it answered by a thread for such work, and answers itself where that takes too long. */
    private void work(Endpoint.Found found, byte[] bytes) {
      Endpoint endpoint = found.endpoint();
      try {
        boolean computes = endpoint.work() == Endpoint.Work.COMPUTES;
        CompletableFuture<Answering.Answer> answer = new CompletableFuture<>();
        Future<?> work = (computes ? computing : looking).submit(() -> {
          try {
            answer.complete(answers.answer(
                endpoint, found.word(), endpoint.isPost() ? Bodies.read(bytes) : Map.of()));
          } catch (Problem | RuntimeException | Error e) {
            answer.completeExceptionally(e);
          }
        });
        var unused = answer
            .orTimeout(settings.longest().toMillis(), TimeUnit.MILLISECONDS)
            .handle((told, failure) -> {
              if (failure == null) {
                send(
                    told.status(), JSON, Bodies.write(tellable(endpoint, told.object())), Map.of());
              } else {
                if (computes && failure instanceof TimeoutException) {
                  work.cancel(/* mayInterruptIfRunning= */ true); // nobody waits for it any more
                }
                refuse(problem(failure, computes));
              }
              return true;
            })
            .exceptionally(this::broken);
      } catch (RejectedExecutionException e) {
        refuse(new Problem(
            503, "busy", "As many questions are being answered as may be at once; ask again."));
      }
    }

    /** Nothing can be told any more; nobody is kept waiting for it. */
    private boolean broken(Throwable failure) {
      FAULTS.log(System.Logger.Level.ERROR, what, failure);
      callback.failed(failure);
      return false;
    }

    private Problem problem(Throwable failure, boolean computes) {
      if (failure instanceof Problem problem) {
        if (problem.status() >= 500) {
          FAULTS.log(System.Logger.Level.WARNING, what, problem.getCause());
        }
        return problem;
      }
      if (failure instanceof TimeoutException) {
        return new Problem(
            503,
            "too-slow",
            computes
                ? "The answer was not ready within " + inWords(settings.longest())
                    + " and was given up; ask for less: fewer parts to choose, a catalogue of fewer articles (those of"
                    + " the kinds and sizes in question, as one of the files), a smaller network. Where /health does"
                    + " not answer either, it is the stock that does not; tell who runs it."
                : "The stock did not answer within " + inWords(settings.longest())
                    + "; ask again, a reservation by the same reference, or tell who runs it.");
      }
      FAULTS.log(System.Logger.Level.ERROR, what, failure);
      return new Problem(500, "fault", "Something failed here; it is noted.");
    }

    /** What stands ready. */
    private void tell(Endpoint endpoint) throws Problem {
      switch (endpoint) {
        case OPENAPI -> send(200, JSON, openApi, Map.of());
        case METRICS ->
          send(
              200,
              "text/plain;version=0.0.4;charset=utf-8",
              metrics.toText(computing.getActiveCount()).getBytes(StandardCharsets.UTF_8),
              Map.of());
        default ->
          send(
              200,
              "text/html;charset=utf-8",
              page.orElseThrow(
                  () -> new Problem(404, "no-page", "No page is served here; see /openapi.json.")),
              Map.of("Content-Security-Policy", "frame-ancestors 'none'"));
      }
    }

    void refuse(Problem problem) {
      Map<String, String> more = new LinkedHashMap<>();
      if (problem.status() == 503) {
        more.put("Retry-After", RETRY_AFTER);
      }
      if (problem.status() == 401) {
        more.put("WWW-Authenticate", "Bearer");
      }
      if (problem.status() == 405) {
        more.put("Allow", String.valueOf(problem.toObject().get("accepted")));
      }
      if (problem.isAmidBody()) {
        more.put("Connection", "close");
      }
      send(problem.status(), Problem.TYPE, Bodies.write(problem.toObject()), more);
    }

    private void send(int status, String type, byte[] body, Map<String, String> more) {
      response.setStatus(status);
      HttpFields.Mutable headers = response.getHeaders();
      headers.put(HttpHeader.CONTENT_TYPE, type);
      headers.put(HttpHeader.CACHE_CONTROL, "no-store");
      headers.put("X-Content-Type-Options", "nosniff");
      headers.put("Referrer-Policy", "no-referrer");
      headers.put("Cross-Origin-Resource-Policy", "same-origin");
      headers.put("X-Frame-Options", "DENY");
      headers.put("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
      more.forEach((name, value) -> headers.put(new HttpField(name, value)));
      headers.put(HttpHeader.CONTENT_LENGTH, body.length);
      response.write(
          true,
          ByteBuffer.wrap(body),
          Callback.from(() -> end(status, body.length, null), failure -> end(status, 0, failure)));
    }

    private void end(int status, int bytes, @Nullable Throwable failure) {
      long nanos = System.nanoTime() - began;
      metrics.count(what, status, nanos);
      ACCESS.log(
          System.Logger.Level.INFO,
          () -> what + " " + status + " " + nanos / NANOS_PER_MILLI + " ms "
              + Request.getContentBytesRead(request) + " in " + bytes + " out");
      if (failure == null) {
        callback.succeeded();
      } else {
        callback.failed(failure);
      }
    }
  }

  private static String inWords(Duration time) {
    return time.toMillis() % 1000 == 0 ? time.toSeconds() + " s" : time.toMillis() + " ms";
  }
}
