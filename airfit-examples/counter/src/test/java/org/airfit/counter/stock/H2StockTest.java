package org.airfit.counter.stock;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The stock in a folder. */
class H2StockTest extends StockContract {

  @TempDir
  private Path folder;

  @Override
  Database opened() throws Exception {
    return Database.open(Database.embedded(folder.resolve(UUID.randomUUID().toString())));
  }

  @Test
  void an_address_of_another_kind_is_refused() {
    assertThatThrownBy(() -> Database.open("jdbc:other:x"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must begin with jdbc:h2: or jdbc:postgresql:");
    assertThatThrownBy(() -> Database.open("jdbc:h2:mem:x;write_delay=500"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("WRITE_DELAY");
  }
}
