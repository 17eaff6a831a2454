package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Why plain brass and aluminium do not suit there is told, and that it is from memory. */
class CausticCleanerTest {

  private static Finding material(Material material, Environment place) {
    List<Part> parts = Shelf.parts().stream()
        .<Part>map(part -> part instanceof Part.Plug plug
            ? new Part.Plug(plug.facts().withMaterial(material), plug.profile(), plug.end())
            : part)
        .toList();
    return Selection.of(Shelf.job().environment(place).build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0))
        .findings()
        .stream()
        .filter(found -> found.rule() == Rule.MATERIAL_SUITS)
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "BRASS, WASH_DOWN_WITH_CAUSTIC, true",
    "ALUMINIUM, WASH_DOWN_WITH_CAUSTIC, true",
    "STEEL, WASH_DOWN_WITH_CAUSTIC, false",
    "ALUMINIUM, WASH_DOWN_WITH_WATER, false"
  })
  void what_a_caustic_cleaner_eats_is_marked_as_from_memory(
      Material material, Environment place, boolean isSaid) {
    Finding finding = material(material, place);
    assertThat(finding.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(finding.reason().contains(" eats plain brass and aluminium (from memory)."))
        .isEqualTo(isSaid);
  }
}
