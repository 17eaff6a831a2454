package org.airfit.counter;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;

/**
 * How a service is run.
 *
 * @param address where it listens
 * @param port the port it listens on; 0 for any that is free
 * @param token what a caller must show; may be empty only where nobody else can reach the service
 * @param page the counter page to serve, one file; empty where none is served
 * @param mostAtOnce so many questions are computed at once
 * @param longest so long may an answer take
 * @param longestBody so long may the body of a question take to come
 */
public record Settings(
    String address,
    int port,
    Optional<String> token,
    Optional<Path> page,
    int mostAtOnce,
    Duration longest,
    Duration longestBody) {

  /** Only programs of the same machine reach it. */
  public static final String THIS_MACHINE = "127.0.0.1";

  private static final int SHORTEST_TOKEN = 16;
  private static final int MOST_AT_ONCE = 1000;

  /** Our own choice: two for each core, for a question computes and does not wait. */
  private static final int USUAL_AT_ONCE = 2 * Runtime.getRuntime().availableProcessors();

  private static final Duration USUAL_LONGEST = Duration.ofSeconds(2);
  private static final Duration USUAL_BODY = Duration.ofSeconds(10);

  /**
   * Checks that nobody reaches it without a token.
   *
   * @param address where it listens
   * @param port the port it listens on; 0 for any that is free
   * @param token what a caller must show; may be empty only where nobody else can reach the service
   * @param page the counter page to serve, one file; empty where none is served
   * @param mostAtOnce so many questions are computed at once
   * @param longest so long may an answer take
   * @param longestBody so long may the body of a question take to come
   * @throws IllegalArgumentException if {@code address} is not known, is not of this machine alone and there is no
   *     token, the token has fewer than 16 letters or a sign that no header can hold, {@code port} is not in
   *     [0, 65535], {@code mostAtOnce} is not in [1, 1000], or a time is not above 0
   */
  public Settings {
    Objects.requireNonNull(address, "address");
    Objects.requireNonNull(token, "token");
    Objects.requireNonNull(page, "page");
    Objects.requireNonNull(longest, "longest");
    Objects.requireNonNull(longestBody, "longestBody");
    if (!(port >= 0 && port <= 65535)) {
      throw new IllegalArgumentException("port must be in [0, 65535], was " + port);
    }
    if (!(mostAtOnce >= 1 && mostAtOnce <= MOST_AT_ONCE)) {
      throw new IllegalArgumentException(
          "questions at once must be in [1, " + MOST_AT_ONCE + "], were " + mostAtOnce);
    }
    if (longest.isNegative()
        || longest.isZero()
        || longestBody.isNegative()
        || longestBody.isZero()) {
      throw new IllegalArgumentException(
          "times must be above 0, were " + longest + " and " + longestBody);
    }
    if (token.isEmpty() && !isLoopback(address)) {
      throw new IllegalArgumentException(
          "token must be told where others can reach the service, at "
              + address + "; tell one of at least " + SHORTEST_TOKEN + " letters, or listen at "
              + THIS_MACHINE);
    }
    token.ifPresent(word -> {
      if (word.length() < SHORTEST_TOKEN || !word.chars().allMatch(c -> c > ' ' && c < 127)) {
        throw new IllegalArgumentException("token must have at least " + SHORTEST_TOKEN
            + " letters, digits or signs of ASCII without blanks, had " + word.length());
      }
    });
  }

  /**
   * Obtains the usual settings: for this machine alone, on any free port, without a page.
   *
   * @return the settings
   */
  public static Settings usual() {
    return new Settings(
        THIS_MACHINE,
        0,
        Optional.empty(),
        Optional.empty(),
        USUAL_AT_ONCE,
        USUAL_LONGEST,
        USUAL_BODY);
  }

  /**
   * Obtains the same at another place.
   *
   * @param place where it listens
   * @param number the port it listens on; 0 for any that is free
   * @param word what a caller must show; may be empty only where nobody else can reach the service
   * @return the settings
   * @throws IllegalArgumentException if others can reach the service and there is no token
   */
  public Settings at(String place, int number, Optional<String> word) {
    return new Settings(place, number, word, page, mostAtOnce, longest, longestBody);
  }

  /**
   * Obtains the same with a page.
   *
   * @param file the counter page
   * @return the settings
   */
  public Settings withPage(Path file) {
    return new Settings(address, port, token, Optional.of(file), mostAtOnce, longest, longestBody);
  }

  /**
   * Obtains the same with other limits.
   *
   * @param questions so many questions are computed at once
   * @param answer so long may an answer take
   * @param body so long may the body of a question take to come
   * @return the settings
   * @throws IllegalArgumentException if a limit is not above 0
   */
  public Settings limitedTo(int questions, Duration answer, Duration body) {
    return new Settings(address, port, token, page, questions, answer, body);
  }

  /** Whether only programs of the same machine reach an address. */
  private static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("address must be one of this machine, such as "
          + THIS_MACHINE + " or 0.0.0.0, was \"" + address + "\"");
    }
  }
}
