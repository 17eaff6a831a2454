package org.airfit.flow;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import org.airfit.flow.RatingClause.Role;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.UnmarkedFlow;
import org.airfit.quantity.ValveCoefficient;
import org.jspecify.annotations.Nullable;

/** What stands in one row of a rating, each value at most once. Filled while it is read, then only read. */
final class RatingRow {

  static final String ACCEPTED = "\"Cv 1.4\", \"Kv 1.2\", \"40 scfm at 100 psig, 5 psi drop\","
      + " \"40 scfm full flow at 90 psig\", \"C 6 dm3/(s bar), b 0.3\", \"S 12 mm2\","
      + " or points such as \"20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop\"";

  private static final String SAY_WHICH =
      " does not tell from where the pressure counts: say psig or bar(g) for a gauge reading, psia or"
          + " bar(a) for an absolute one, and \"5 psi drop\" for a pressure drop";

  private final String text;
  private final int start;

  @Nullable
  ValveCoefficient coefficient;

  @Nullable
  SonicConductance conductance;

  @Nullable
  Area area;

  @Nullable
  FreeAirFlow flow;

  @Nullable
  UnmarkedFlow unmarked;

  @Nullable
  GaugePressure gaugeInlet;

  @Nullable
  AbsolutePressure inlet;

  @Nullable
  GaugePressure gaugeOutlet;

  @Nullable
  AbsolutePressure outlet;

  @Nullable
  PressureDrop drop;

  @Nullable
  PressureDrop opens;

  @Nullable
  Temperature temperature;

  @Nullable
  Double b;

  @Nullable
  Double m;

  @Nullable
  Double xt;

  boolean full;
  private int flowAt;

  /** Reads the row of {@code text} between two places. */
  RatingRow(String text, int from, int to) {
    this.text = text;
    this.start = from;
    Set<Role> carried = EnumSet.noneOf(Role.class);
    for (RatingClause clause : RatingClause.of(text.substring(from, to), from)) {
      Set<Role> roles = EnumSet.noneOf(Role.class);
      roles.addAll(clause.roles());
      roles.addAll(carried);
      carried.clear();
      full |= roles.remove(Role.FULL);
      if (clause.value().isEmpty()) {
        carried.addAll(roles);
      } else {
        take(clause, roles);
      }
    }
  }

  /** A complaint about a place of the whole text. */
  QuantityFormatException wrong(int at, String problem) {
    return new QuantityFormatException(text, at, problem, ACCEPTED);
  }

  /** A complaint about this row. */
  QuantityFormatException wrong(String problem) {
    return wrong(start, problem);
  }

  private void take(RatingClause clause, Set<Role> roles) {
    String value = clause.value();
    int at = clause.at();
    if (takeFigure(value, at)) {
      return;
    }
    if (roles.contains(Role.OPENS)) {
      opens = once(opens, part(value, at, PressureDrop::parse), at, "drop at which it opens");
      return;
    }
    if (roles.contains(Role.DROP) || isMarkedDrop(value)) {
      drop = once(drop, part(value, at, PressureDrop::parse), at, "pressure drop");
      return;
    }
    if (roles.contains(Role.AT) && (flow != null || unmarked != null) && takeState(at, value)) {
      return;
    }
    if (takeFlow(value, at) || takePressure(value, at, roles)) {
      return;
    }
    Temperature degrees = maybe(value, Temperature::parse);
    if (degrees != null) {
      temperature = once(temperature, degrees, at, "temperature");
      return;
    }
    throw wrong(at, "\"" + value + "\" is nothing a rating has");
  }

  /** "5 psid" and "0.3 bar diff". */
  private static boolean isMarkedDrop(String value) {
    return maybe(value, PressureDrop::parse) != null
        && (value.endsWith("d") || value.toLowerCase(Locale.ROOT).endsWith("diff"));
  }

  private boolean takeFlow(String value, int at) {
    FreeAirFlow marked = maybe(value, FreeAirFlow::parse);
    UnmarkedFlow bare = marked == null ? maybe(value, UnmarkedFlow::parse) : null;
    if (marked == null && bare == null) {
      return false;
    }
    if (flow != null || unmarked != null) {
      throw wrong(at, "a second flow: put a semicolon between the points of a table");
    }
    flow = marked;
    unmarked = bare;
    flowAt = at;
    return true;
  }

  /** A flow whose state stands behind an "at" of its own: "40 cfm @ 68 °F", "16 L/s at shop (15 °C, …)". */
  private boolean takeState(int at, String value) {
    FreeAirFlow counted = maybe(text.substring(flowAt, at + value.length()), FreeAirFlow::parse);
    if (counted == null) {
      return false;
    }
    flow = counted;
    unmarked = null;
    return true;
  }

  private boolean takePressure(String value, int at, Set<Role> roles) {
    GaugePressure gauge = maybe(value, GaugePressure::parse);
    AbsolutePressure absolute = gauge == null ? maybe(value, AbsolutePressure::parse) : null;
    if (gauge == null && absolute == null) {
      if (maybe(value, PressureDrop::parse) != null) {
        throw wrong(at, "\"" + value + "\"" + SAY_WHICH);
      }
      return false;
    }
    boolean behind = roles.contains(Role.OUTLET);
    if (behind ? gaugeOutlet != null || outlet != null : gaugeInlet != null || inlet != null) {
      throw wrong(
          at,
          behind
              ? "a second pressure behind the part"
              : "a second pressure in front of the part: say \"from 6 bar(g) to 5 bar(g)\" or \"5 psi drop\"");
    }
    if (behind) {
      gaugeOutlet = gauge;
      outlet = absolute;
    } else {
      gaugeInlet = gauge;
      inlet = absolute;
    }
    return true;
  }

  /** A figure by its letters: Cv, Kv, C, b, m, xT, S; or by a unit that nothing else has. */
  private boolean takeFigure(String value, int at) {
    int end = 0;
    while (end < value.length()
        && (Character.isLetter(value.charAt(end)) || value.charAt(end) == '_')) {
      end++;
    }
    int from = end;
    while (from < value.length() && " =:".indexOf(value.charAt(from)) >= 0) {
      from++;
    }
    String rest = value.substring(from);
    switch (value.substring(0, end).toLowerCase(Locale.ROOT)) {
      case "cv", "kv", "kvs", "c_v", "k_v" -> takeCoefficient(value.charAt(0), rest, at, at + from);
      case "c" ->
        conductance = once(
            conductance, part(rest, at + from, SonicConductance::parse), at, "sonic conductance C");
      case "s", "ae", "a_e" ->
        area = once(area, part(rest, at + from, Area::parse), at, "effective area S");
      case "b" -> b = once(b, number(rest, at + from, "critical pressure ratio b"), at, "b");
      case "m" -> m = once(m, number(rest, at + from, "subsonic index m"), at, "m");
      case "xt", "x_t" ->
        xt = once(xt, number(rest, at + from, "pressure ratio factor xT"), at, "xT");
      default -> {
        return takeUnit(value, at);
      }
    }
    return true;
  }

  private boolean takeUnit(String value, int at) {
    ValveCoefficient valve = maybe(value, ValveCoefficient::parse);
    SonicConductance c = valve == null ? maybe(value, SonicConductance::parse) : null;
    Area section = valve == null && c == null ? maybe(value, Area::parse) : null;
    if (valve != null) {
      coefficient = once(coefficient, valve, at, "flow coefficient");
    } else if (c != null) {
      conductance = once(conductance, c, at, "sonic conductance C");
    } else if (section != null) {
      area = once(area, section, at, "effective area S");
    }
    return valve != null || c != null || section != null;
  }

  /** Kv with a unit is a flow of water: 1.2 m³/h or 20 L/min. */
  private void takeCoefficient(char letter, String rest, int at, int restAt) {
    boolean isKv = letter == 'K' || letter == 'k';
    UnmarkedFlow water = isKv ? maybe(rest, UnmarkedFlow::parse) : null;
    ValveCoefficient read = water != null
        ? ValveCoefficient.ofKv(3600.0 * water.readings().get(0).flow().cubicMetresPerSecond())
        : part(
            rest.isEmpty() ? rest : rest + (isKv ? " Kv" : " Cv"), restAt, ValveCoefficient::parse);
    coefficient = once(coefficient, read, at, "flow coefficient");
  }

  /** A plain decimal number in [0, 1]. */
  private double number(String digits, int at, String what) {
    for (int i = 0; i < digits.length(); i++) {
      if ("0123456789.".indexOf(digits.charAt(i)) < 0) {
        throw wrong(at + i, what + " is a plain number such as 0.3");
      }
    }
    double value;
    try {
      value = Double.parseDouble(digits);
    } catch (NumberFormatException e) {
      QuantityFormatException wrong = wrong(at, what + " is a plain number such as 0.3");
      wrong.initCause(e);
      throw wrong;
    }
    if (!(value >= 0.0 && value <= 1.0)) {
      throw wrong(at, what + " must be between 0 and 1, was " + Digits.told(value));
    }
    return value;
  }

  private <T> T once(@Nullable T before, T now, int at, String what) {
    if (before != null) {
      throw wrong(at, "a second " + what);
    }
    return now;
  }

  private <T> T part(String value, int at, Function<String, T> parse) {
    try {
      return parse.apply(value);
    } catch (QuantityFormatException e) {
      QuantityFormatException wrong =
          wrong(Math.min(at + e.position(), text.length()), e.problem());
      wrong.initCause(e);
      throw wrong;
    }
  }

  private static <T> @Nullable T maybe(String value, Function<String, T> parse) {
    try {
      return parse.apply(value);
    } catch (QuantityFormatException e) {
      return null;
    }
  }

  boolean hasFlow() {
    return flow != null || unmarked != null;
  }

  boolean hasInlet() {
    return inlet != null || gaugeInlet != null;
  }

  /** Takes the inlet of another row, where this one has none. */
  void inheritInlet(RatingRow other) {
    if (!hasInlet()) {
      inlet = other.inlet;
      gaugeInlet = other.gaugeInlet;
    }
    if (temperature == null) {
      temperature = other.temperature;
    }
  }

  /** The least and the most air the flow may mean. */
  List<FreeAirFlow> flows() {
    if (unmarked != null) {
      return List.of(unmarked.least(), unmarked.most());
    }
    return flow == null ? List.of() : List.of(flow);
  }
}
