package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/** An answer as plain values for JSON, and back; a quantity is a text that is read as the very same value. */
final class AnswerText {

  private AnswerText() {}

  static Map<String, Object> toPlain(Answered answer) {
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("kind", answer.kind().word());
    plain.put("units", answer.units().name());
    plain.put("headline", answer.headline());
    answer.plug().ifPresent(plug -> {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("verdict", plug.verdict());
      plug.profile().ifPresent(profile -> told.put("profile", profile));
      told.put("sentence", plug.sentence());
      plain.put("plug", told);
    });
    answer.before().ifPresent(air -> plain.put("before", air(air)));
    plain.put("proposals", list(answer.proposals(), AnswerText::parts));
    plain.put(
        "rules",
        list(
            answer.rules(),
            rule ->
                Map.of("rule", rule.rule(), "outcome", rule.outcome(), "reason", rule.reason())));
    plain.put("toGive", answer.toGive());
    plain.put("cautions", list(answer.cautions(), AnswerText::caution));
    return plain;
  }

  private static Map<String, Object> caution(Answered.CautionTold caution) {
    return Map.of("title", caution.title(), "text", caution.text(), "source", caution.source());
  }

  private static Answered.CautionTold cautionOf(Object plain) {
    return new Answered.CautionTold(
        text(plain, "title"), text(plain, "text"), text(plain, "source"));
  }

  private static <T> List<Object> list(List<T> items, Function<T, Object> plain) {
    return items.stream().map(plain).toList();
  }

  private static Map<String, Object> parts(Answered.PartsTold proposal) {
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("parts", list(proposal.parts(), AnswerText::part));
    proposal.price().ifPresent(price -> plain.put("price", price.toString()));
    plain.put("air", list(proposal.air(), AnswerText::air));
    proposal.cautions().ifPresent(own -> plain.put("cautions", list(own, AnswerText::caution)));
    proposal.bill().ifPresent(lines -> plain.put("bill", list(lines, AnswerText::line)));
    return plain;
  }

  private static Map<String, Object> line(Answered.LineTold line) {
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("kind", line.kind());
    plain.put("name", line.name());
    line.id().ifPresent(id -> plain.put("id", id));
    plain.put("quantity", line.quantity());
    line.price().ifPresent(price -> plain.put("price", price.toString()));
    return plain;
  }

  private static Map<String, Object> part(Answered.PartTold part) {
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("id", part.id());
    plain.put("name", part.name());
    part.price().ifPresent(price -> plain.put("price", price.toString()));
    part.rated().ifPresent(rated -> plain.put("rated", rated.toString()));
    return plain;
  }

  private static Map<String, Object> air(Answered.AirTold air) {
    Map<String, Object> plain = new LinkedHashMap<>();
    plain.put("tool", air.tool());
    air.arrives().ifPresent(pressure -> plain.put("arrives", pressure.toString()));
    plain.put("restriction", air.restriction());
    plain.put(
        "losses",
        list(
            air.losses(),
            loss -> Map.of("name", loss.name(), "lost", loss.lost().toString())));
    air.needs().ifPresent(pressure -> plain.put("needs", pressure.toString()));
    return plain;
  }

  /**
   * Reads an answer.
   *
   * @throws IllegalArgumentException if it is none
   */
  static Answered of(Object plain) {
    return new Answered(
        kind(text(plain, "kind")),
        UnitSystem.valueOf(text(plain, "units")),
        text(plain, "headline"),
        find(plain, "plug")
            .map(plug -> new Answered.PlugTold(
                text(plug, "verdict"), words(plug, "profile"), text(plug, "sentence"))),
        find(plain, "before").map(AnswerText::airOf),
        items(
            plain,
            "proposals",
            proposal -> new Answered.PartsTold(
                items(proposal, "parts", AnswerText::partOf),
                words(proposal, "price").map(Money::parse),
                items(proposal, "air", AnswerText::airOf),
                find(proposal, "cautions")
                    .map(own -> items(proposal, "cautions", AnswerText::cautionOf)),
                find(proposal, "bill").map(lines -> items(proposal, "bill", AnswerText::lineOf)))),
        items(
            plain,
            "rules",
            rule -> new Answered.RuleTold(
                text(rule, "rule"), text(rule, "outcome"), text(rule, "reason"))),
        items(plain, "toGive", String::valueOf),
        items(plain, "cautions", AnswerText::cautionOf));
  }

  private static Answered.Kind kind(String word) {
    for (Answered.Kind kind : Answered.Kind.values()) {
      if (kind.word().equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("kind must be one of an answer, was " + word);
  }

  private static Answered.PartTold partOf(Object plain) {
    return new Answered.PartTold(
        text(plain, "id"),
        text(plain, "name"),
        words(plain, "price").map(Money::parse),
        words(plain, "rated").map(GaugePressure::parse));
  }

  private static Answered.LineTold lineOf(Object plain) {
    if (!(find(plain, "quantity").orElse("") instanceof Number quantity)) {
      throw new IllegalArgumentException("quantity of a line must be a number");
    }
    return new Answered.LineTold(
        text(plain, "kind"),
        text(plain, "name"),
        words(plain, "id"),
        quantity.intValue(),
        words(plain, "price").map(Money::parse));
  }

  private static Answered.AirTold airOf(Object plain) {
    return new Answered.AirTold(
        text(plain, "tool"),
        words(plain, "arrives").map(GaugePressure::parse),
        text(plain, "restriction"),
        items(
            plain,
            "losses",
            loss ->
                new Answered.LossTold(text(loss, "name"), PressureDrop.parse(text(loss, "lost")))),
        words(plain, "needs").map(GaugePressure::parse));
  }

  private static Optional<Object> find(Object plain, String field) {
    if (plain instanceof Map<?, ?> map) {
      @Nullable Object value = map.get(field);
      return Optional.ofNullable(value);
    }
    throw new IllegalArgumentException(field + " must stand in an object");
  }

  private static Optional<String> words(Object plain, String field) {
    return find(plain, field).map(String::valueOf);
  }

  private static String text(Object plain, String field) {
    return words(plain, field)
        .orElseThrow(() -> new IllegalArgumentException(field + " must be told"));
  }

  private static <T> List<T> items(Object plain, String field, Function<Object, T> read) {
    List<T> items = new ArrayList<>();
    if (find(plain, field).orElse(List.of()) instanceof List<?> list) {
      for (Object item : list) {
        items.add(read.apply(item));
      }
    }
    return items;
  }
}
