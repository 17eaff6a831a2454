package org.airfit.counter;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.Objects;
import java.util.Optional;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Stock;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** A service that answers over HTTP, until it is closed: questions that are being answered are answered to the end. */
public final class CounterService implements AutoCloseable {

  /** Nothing but connections waits on these threads; our own choice. */
  private static final int THREADS = 16;

  private static final int LEAST_THREADS = 4;

  /** Our own choice: a connection costs little, and a shop has fewer tills. */
  private static final int MOST_CONNECTIONS = 1000;

  /** Long enough for a body, which has a limit of its own [ms]. */
  private static final int IDLE_MILLIS = 30_000;

  /** The number of an article may have a / or %, in a path %2F or %25; no path of a file is made of it. */
  private static final UriCompliance WORDS_WITH_SLASHES = UriCompliance.DEFAULT.with(
      "words-with-slashes",
      UriCompliance.Violation.AMBIGUOUS_PATH_SEPARATOR,
      UriCompliance.Violation.AMBIGUOUS_PATH_ENCODING);

  private static final int STOP_MILLIS = 10_000;
  private static final int HEADER_BYTES = 8192;

  private final Server server;
  private final ServerConnector connector;
  private final Guard guard;

  private CounterService(Server server, ServerConnector connector, Guard guard) {
    this.server = server;
    this.connector = connector;
    this.guard = guard;
  }

  /**
   * Starts a service.
   *
   * @param settings how it is run
   * @param stock the catalogue of the shop
   * @param shelf its pieces
   * @return the service, which answers
   * @throws IOException if the page cannot be read, or nothing can listen at the address
   */
  public static CounterService start(Settings settings, Stock stock, Shelf shelf)
      throws IOException {
    Objects.requireNonNull(settings, "settings");
    Answers answers =
        new Answers(Objects.requireNonNull(stock, "stock"), Objects.requireNonNull(shelf, "shelf"));
    answers.warmUp();
    return start(settings, answers);
  }

  /** Starts a service over whoever answers. */
  static CounterService start(Settings settings, Answering answers) throws IOException {
    Optional<byte[]> page = settings.page().isPresent()
        ? Optional.of(Files.readAllBytes(settings.page().get()))
        : Optional.empty();
    Guard guard = new Guard(settings, answers, openApi(), page);
    QueuedThreadPool threads = new QueuedThreadPool(THREADS, LEAST_THREADS);
    threads.setName("http");
    Server server = new Server(threads);
    HttpConfiguration http = new HttpConfiguration();
    http.setSendServerVersion(false);
    // Or a token in other capitals were read as the right one that its connection showed before.
    http.setHeaderCacheCaseSensitive(true);
    http.setRequestHeaderSize(HEADER_BYTES);
    http.setUriCompliance(WORDS_WITH_SLASHES);
    ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
    connector.setHost(settings.address());
    connector.setPort(settings.port());
    connector.setIdleTimeout(IDLE_MILLIS);
    server.addConnector(connector);
    server.addBean(new NetworkConnectionLimit(MOST_CONNECTIONS, connector));
    server.setHandler(new GracefulHandler(guard));
    server.setErrorHandler(guard::refusedByServer);
    server.setStopTimeout(STOP_MILLIS);
    server.setStopAtShutdown(true);
    try {
      server.start();
    } catch (Exception e) {
      throw new IOException(
          "nothing can listen at " + settings.address() + ", port " + settings.port() + ": "
              + e.getMessage(),
          e);
    }
    return new CounterService(server, connector, guard);
  }

  private static byte[] openApi() throws IOException {
    try (InputStream in = Objects.requireNonNull(
        CounterService.class.getResourceAsStream("openapi.json"), "openapi.json")) {
      return in.readAllBytes();
    }
  }

  /** {@return the port it listens on} */
  public int port() {
    return connector.getLocalPort();
  }

  /** Waits until it was stopped by a signal. */
  void join() throws InterruptedException {
    server.join();
  }

  /**
   * Stops: takes no new question, and ends when those being answered are answered, after ten seconds at the latest.
   *
   * @throws IOException if it cannot be stopped
   */
  @Override
  public void close() throws IOException {
    try {
      server.stop();
    } catch (Exception e) {
      throw new IOException("the service cannot be stopped: " + e.getMessage(), e);
    } finally {
      guard.end();
    }
  }
}
