package org.airfit.browser.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NoticeTest {

  @Test
  void the_licences_stand_at_the_head_once(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("a.mjs"), "export {};\n");
    Notice.main(new String[] {file.toString()});
    Notice.main(new String[] {file.toString()});
    String code = Files.readString(file);
    assertThat(code).startsWith("/*!").endsWith(" */\nexport {};\n").containsOnlyOnce("TeaVM 0.16.0");
    assertThat(code)
        .contains("Apache License, Version 2.0", "Redistributions in binary form must reproduce")
        .doesNotContain("</script", "<!--");
    assertThat(code.indexOf("*/")).isEqualTo(code.lastIndexOf("*/"));
  }
}
