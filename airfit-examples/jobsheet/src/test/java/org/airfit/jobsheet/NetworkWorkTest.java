package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the tools of a network do is seen on its sheet: what a rule forbids in short, and cautions with their tools. */
class NetworkWorkTest {

  @TempDir
  private Path folder;

  private String sheet(String columns, String ofNetwork, String ofBench, String ofBooth)
      throws IOException {
    Path file = folder.resolve("shed.csv");
    Files.writeString(file, """
        record,name,from,to,bore,length,roughness,tool,air,needs,pressure,temperature,atmosphere,customer,%s
        network,Shed,,,,,,,,,,20 °C,1 bar(a),K.,%s
        supply,,,room,,,,,,,120 psig,,,,
        drop,bench,room,,16 mm,3 m,0.01 mm,hammer,5 scfm,50 psig,,,,,%s
        drop,booth,room,,16 mm,3 m,0.01 mm,gun,5 scfm,50 psig,,,,,%s
        """.formatted(columns, ofNetwork, ofBench, ofBooth));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream terminal = new PrintStream(out, true, StandardCharsets.UTF_8);
    String[] args = {file.toString(), folder.resolve("shed.html").toString()};
    assertThat(NetworkProgram.run(args, terminal, terminal))
        .as(out.toString(StandardCharsets.UTF_8))
        .isZero();
    return out.toString(StandardCharsets.UTF_8);
  }

  /** Without the line ends that a terminal needs. */
  private static String flowing(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void what_a_rule_forbids_stands_in_short_with_the_drops_where_it_does() throws IOException {
    String sheet = sheet("paints,lubricated", ",yes", ",", "yes,");
    String line = "Oiled air to a paint gun at booth: A lubricated line must not feed painting.";
    assertThat(flowing(sheet)).contains("Not allowed: " + line);
    assertThat(Files.readString(folder.resolve("shed.html"))).contains("Not allowed", line);
    assertThat(sheet("paints,lubricated", ",", ",", "yes,")).doesNotContain("Not allowed");
  }

  /** Where each rule is from is printed by the program; the side that is handed over has no room for it. */
  @Test
  void the_page_tells_every_caution_without_its_source_and_codes_and_makers_last()
      throws IOException {
    assertThat(sheet("paints", "", ",", "yes,")).contains("CFR");
    String page = Files.readString(folder.resolve("shed.html"));
    String care =
        page.substring(page.indexOf("Before anyone works on it"), page.indexOf("<footer"));
    assertThat(care)
        .contains("Energy isolation.", "Oil in a paint line")
        .doesNotContain("CFR", "from memory")
        .containsPattern("(?s)</div>\\s*<p>This is a calculation, not an approval");
    assertThat(page).contains("where each rule is from", "break-inside: avoid");
  }

  @Test
  void a_rule_of_the_works_that_forbids_at_every_drop_names_none() throws IOException {
    Files.writeString(folder.resolve("own.csv"), """
        jurisdiction,citation,text,title,quantity,operator,limit,unit,source,basis
        Yard,rule 1,at most 100 psi,Yard pressure,line pressure,<=,100,psi,notice board,read
        """);
    assertThat(flowing(sheet("rulesOwn", "own.csv", "", "")))
        .contains("Not allowed: Yard pressure: ")
        .contains("It was judged by rules of US federal law, Yard");
  }

  @Test
  void cautions_name_their_tools_once_and_codes_and_makers_come_last() throws IOException {
    String sheet = sheet("hammers,onHose", ",", "yes,yes", ",yes");
    String listed =
        sheet.substring(sheet.indexOf("BEFORE ANYONE WORKS ON IT"), sheet.indexOf("THE WORKING"));
    String cautions = flowing(listed);
    assertThat(cautions)
        .containsOnlyOnce("Whip hose (hammer at bench): ")
        .containsOnlyOnce("Whip restraint (every tool): ")
        .containsOnlyOnce("Depressurise before uncoupling")
        .containsOnlyOnce("Before anyone connects this");
    assertThat(listed.substring(listed.lastIndexOf("\n  - ")))
        .startsWith("\n  - Before anyone connects this");
  }
}
