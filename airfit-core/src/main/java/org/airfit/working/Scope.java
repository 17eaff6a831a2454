package org.airfit.working;

import java.util.LinkedHashMap;
import java.util.Map;

/** The symbols of a working that have a value, from where each is given or found to where it is forgotten. */
final class Scope {

  /** What a symbol is worth, and how many digits of it are printed. */
  record Value(Symbol symbol, double value, int digits) {}

  /** Where a value comes from. */
  enum Origin {
    /** It was given. */
    GIVEN,
    /** A step found it, or an included working. */
    FOUND,
    /** Its formula gave it, for only the working needs it. */
    BETWEEN
  }

  private static final class Binding {
    private final Value value;
    private final Origin origin;
    private boolean used;

    private Binding(Value value, Origin origin) {
      this.value = value;
      this.origin = origin;
    }
  }

  private final String title;
  private final Map<String, Binding> bindings = new LinkedHashMap<>();

  /** For the working with this title. */
  Scope(String title) {
    this.title = title;
  }

  void bind(Value value, Origin origin) {
    String text = value.symbol.text();
    if (bindings.containsKey(text)) {
      throw new IllegalStateException("a symbol must have one value in \"" + title + "\", " + text
          + " has two; forget the first where it ends");
    }
    bindings.put(text, new Binding(value, origin));
  }

  /** What is put into a step, with as many digits as are printed at least. */
  CheckedStep.Input input(Symbol symbol, String step, UnitSystem units) {
    Binding binding = use(symbol, step);
    double value = binding.value.value;
    int digits = binding.origin == Origin.GIVEN
        ? PrintedDigits.ofGiven(symbol.kind().shown(value, units), binding.value.digits)
        : binding.value.digits;
    return new CheckedStep.Input(symbol, value, digits);
  }

  /** What a symbol is worth that answers the working. */
  Value answer(Symbol symbol) {
    Binding binding = use(symbol, title);
    if (binding.origin == Origin.GIVEN) {
      throw new IllegalStateException(
          "an answer must be found by a step, " + symbol + " of \"" + title + "\" was given");
    }
    if (binding.origin == Origin.BETWEEN) {
      throw new IllegalStateException("an answer must be computed by its owner, " + symbol
          + " of \"" + title + "\" is only what its formula gives");
    }
    return new Value(symbol, binding.value.value, binding.value.digits);
  }

  private Binding use(Symbol symbol, String where) {
    Binding binding = bindings.get(symbol.text());
    if (binding == null) {
      throw new IllegalStateException("every symbol must be given or found before, " + symbol
          + " of \"" + where + "\" was not");
    }
    String base = binding.value.symbol.kind().base();
    if (!base.equals(symbol.kind().base())) {
      throw new IllegalStateException(symbol + " of \"" + where + "\" must be in \"" + base
          + "\" as before, was in \"" + symbol.kind().base() + "\"");
    }
    binding.used = true;
    return binding;
  }

  void forget(Symbol symbol) {
    Binding binding = bindings.remove(symbol.text());
    if (binding == null || !binding.used) {
      throw new IllegalStateException("a symbol must be used before it is forgotten in \"" + title
          + "\", " + symbol + " was not");
    }
  }

  void requireAllUsed() {
    bindings.forEach((text, binding) -> {
      if (!binding.used) {
        throw new IllegalStateException(
            "what is " + (binding.origin == Origin.GIVEN ? "given" : "found")
                + " must be used or be the answer in \"" + title + "\", " + text + " is not");
      }
    });
  }
}
