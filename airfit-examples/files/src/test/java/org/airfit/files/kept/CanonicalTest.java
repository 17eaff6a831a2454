package org.airfit.files.kept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.airfit.files.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class CanonicalTest {

  /** The texts are the standard's own, so they must agree to the letter. */
  @ParameterizedTest
  @CsvFileSource(resources = "es_numbers.csv", numLinesToSkip = 1)
  void numbers_are_written_as_rfc_8785_lists_them(String bits, String text) {
    double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
    assertThat(Canonical.digits(value)).isEqualTo(text);
  }

  /** The sample of RFC 8785, section 3.2, as the README of its authors' repository has it. */
  @Test
  void the_sample_of_rfc_8785_is_written_as_it_says() throws Exception {
    String sample = """
        {
          "numbers": [1E30,4.50,6,2e-3,0.000000000000000000000000001],
          "escaping": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
          "other":  [null, true, false]
        }
        """;
    assertThat(Canonical.text(Json.read("sample", sample)))
        .isEqualTo("{\"escaping\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\","
            + "\"numbers\":[1e+30,4.5,6,0.002,1e-27],\"other\":[null,true,false]}");
  }

  /** By units of UTF-16, as section 3.2.3 wants it: a sign beyond 0xFFFF begins with 0xD8.., in front of 0xFB... */
  @Test
  void fields_stand_in_the_order_of_their_names() {
    assertThat(Canonical.text(
            Map.of("ö", 1, "1", 2, "\ufb33", 3, "\ud83d\ude00", 4, "€", 5, "\u0080", 6, "\r", 7)))
        .isEqualTo(
            "{\"\\r\":7,\"1\":2,\"\u0080\":6,\"ö\":1,\"€\":5,\"\ud83d\ude00\":4,\"\ufb33\":3}");
  }

  @Test
  void a_number_reads_back_as_the_same_double_and_no_shorter_one_does() {
    SplittableRandom random = new SplittableRandom(17);
    for (int i = 0; i < 20_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        String text = Canonical.digits(value);
        assertThat(Double.parseDouble(text)).isEqualTo(value == 0.0 ? 0.0 : value);
        String javas = Double.toString(value).replaceAll("E.*", "").replaceAll("[-.]", "");
        String ours = text.replaceAll("e.*", "").replaceAll("[-.]", "");
        assertThat(ours.replaceAll("^0+|0+$", ""))
            .hasSizeLessThanOrEqualTo(
                Math.max(1, javas.replaceAll("^0+|0+$", "").length()));
      }
    }
  }

  /** FIPS 180-2, appendix B, has "abc" (from memory); both are what sha256sum of the GNU core utilities prints. */
  @ParameterizedTest
  @CsvSource({
    "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
  })
  void the_hash_is_sha_256(String text, String hash) {
    assertThat(Canonical.sha256(text)).isEqualTo(hash);
  }

  @Test
  void a_text_is_hashed_as_utf_8() {
    assertThat(Canonical.sha256("é")).isNotEqualTo(Canonical.sha256("?"));
  }

  @Test
  void what_is_no_json_is_refused() {
    assertThatThrownBy(() -> Canonical.text(List.of(Double.POSITIVE_INFINITY)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("finite")
        .hasMessageContaining("Infinity");
    assertThatThrownBy(() -> Canonical.text(Map.of("a", new Object())))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("java.lang.Object");
  }
}
