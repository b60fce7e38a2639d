package coatwright.sensors;

import coatwright.json.Json;
import java.io.IOException;

/** Mappings for tests, written as JSON. */
public final class Mappings {
  private Mappings() {}

  public static SourceMapping source(String json) {
    return MappingReader.read(setting(json));
  }

  public static SourceMapping recorded(String json) {
    return MappingReader.read(setting(json), "recorded", false);
  }

  public static Setting setting(String json) {
    try {
      return Setting.of(Json.mapper().readTree(json.replace('\'', '"')));
    } catch (IOException e) {
      throw new IllegalArgumentException(json, e);
    }
  }

  public static SourceMapping mqtt(String source, String filter) {
    return source(
        """
        {'source': '%s', 'transport': 'mqtt', 'filter': '%s', 'room': 'bench room',
         'payload': 'json', 'every': 'PT1M', 'readings': [
          {'quantity': 'air-temperature', 'at': '/t', 'unit': 'Cel'},
          {'quantity': 'relative-humidity', 'at': '/h', 'unit': '%%'}]}
        """
            .formatted(source, filter));
  }

  public static SourceMapping serial(String source, String device) {
    return source(
        """
        {'source': '%s', 'transport': 'serial', 'device': '%s', 'room': 'bench room',
         'settle': 'PT0S', 'line': '9600 8N1', 'payload': 'pattern', 'every': 'PT10S',
         'pattern': '^T=(?<t>[+-]?\\\\d{1,3}(?:\\\\.\\\\d{1,3})?);RH=(?<h>\\\\d{1,3}(?:\\\\.\\\\d{1,3})?)$',
         'readings': [
          {'quantity': 'air-temperature', 'at': 't', 'unit': 'Cel'},
          {'quantity': 'relative-humidity', 'at': 'h', 'unit': '%%'}]}
        """
            .formatted(source, device));
  }
}
