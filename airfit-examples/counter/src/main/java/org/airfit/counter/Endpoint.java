package org.airfit.counter;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be asked of the service, and where; a path may hold one word of the caller's, written {word}. */
enum Endpoint {
  PAGE("GET", "/", Work.NONE),
  HEALTH("GET", "/health", Work.LOOKS),
  METRICS("GET", "/metrics", Work.NONE),
  OPENAPI("GET", "/openapi.json", Work.NONE),
  CATALOGUE("GET", "/stock/catalogue.json", Work.LOOKS),
  STOCK("GET", "/stock/{number}", Work.LOOKS),
  IDENTIFY("POST", "/identify", Work.COMPUTES),
  MATING("POST", "/mating", Work.COMPUTES),
  RUN("POST", "/run", Work.COMPUTES),
  SELECT("POST", "/select", Work.COMPUTES),
  NETWORK("POST", "/network", Work.COMPUTES),
  INTERVIEW("POST", "/interview", Work.COMPUTES),
  DAY("POST", "/day", Work.COMPUTES),
  DIAGNOSIS("POST", "/diagnosis", Work.COMPUTES),
  WATER("POST", "/water", Work.COMPUTES),
  LEAKS("POST", "/leaks", Work.COMPUTES),
  INVENTORY("POST", "/inventory", Work.COMPUTES),
  PRICE_LIST("POST", "/pricelist", Work.COMPUTES),
  CARD("POST", "/card", Work.COMPUTES),
  CONDENSATE("POST", "/condensate", Work.COMPUTES),
  LEAK("POST", "/leak", Work.COMPUTES),
  RESERVE("POST", "/reservations", Work.LOOKS),
  RESERVATION("GET", "/reservations/{reference}", Work.LOOKS),
  SELL("POST", "/reservations/{reference}/sell", Work.LOOKS),
  RELEASE("POST", "/reservations/{reference}/release", Work.LOOKS);

  /** What it costs to answer. */
  enum Work {
    /** Nothing. */
    NONE,
    /** It asks the database. */
    LOOKS,
    /** It computes. */
    COMPUTES
  }

  private final String method;
  private final String path;
  private final Work work;
  private final List<String> steps;

  Endpoint(String method, String path, Work work) {
    this.method = method;
    this.path = path;
    this.work = work;
    this.steps = steps(path);
  }

  String method() {
    return method;
  }

  /** HEAD asks for what GET would say, without its body (RFC 9110, section 9.3.2): the server leaves that out. */
  private List<String> methods() {
    return isPost() ? List.of(method) : List.of(method, "HEAD");
  }

  String path() {
    return path;
  }

  Work work() {
    return work;
  }

  /** Whether a body comes with it. */
  boolean isPost() {
    return method.equals("POST");
  }

  /** Its name in logs and metrics, which never hold a word of the caller's. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  private static List<String> steps(String path) {
    return Arrays.asList(path.split("/", -1));
  }

  /** The word of the caller's in a path of this endpoint; empty if the path is another's. */
  private Optional<String> wordIn(List<String> asked) {
    if (asked.size() != steps.size()) {
      return Optional.empty();
    }
    String word = "";
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).startsWith("{") && !asked.get(i).isEmpty()) {
        word = asked.get(i);
      } else if (!steps.get(i).equals(asked.get(i))) {
        return Optional.empty();
      }
    }
    return Optional.of(word);
  }

  /** An endpoint and the word of the caller's in its path; empty where it has none. */
  record Found(Endpoint endpoint, String word) {}

  /** Finds what a method and a path ask for, as it came: a %2F in it is a letter of a word, and parts no steps. */
  static Found find(String method, String path) throws Problem {
    List<String> asked = new ArrayList<>();
    for (String step : steps(path)) {
      try {
        asked.add(URLDecoder.decode(step.replace("+", "%2B"), StandardCharsets.UTF_8));
      } catch (IllegalArgumentException e) {
        throw new Problem(400, "path", "The path holds a % without two digits behind it.");
      }
    }
    List<String> methods = new ArrayList<>();
    for (Endpoint endpoint : values()) {
      Optional<String> word = endpoint.wordIn(asked);
      if (word.isPresent()) {
        if (endpoint.methods().contains(method)) {
          return new Found(endpoint, word.get());
        }
        methods.addAll(endpoint.methods());
      }
    }
    if (methods.isEmpty()) {
      throw new Problem(404, "no-such-path", "There is nothing at this path; see /openapi.json.");
    }
    throw new Problem(
            405, "method", "This path is asked by " + String.join(", ", methods) + " only.")
        .with("accepted", String.join(", ", methods));
  }
}
