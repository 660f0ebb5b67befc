"""Reads metrics from standard input by Prometheus's own client library; writes names, types and samples as JSON."""
import json
import sys

from prometheus_client.parser import text_string_to_metric_families

families = [
    {
        "name": family.name,
        "type": family.type,
        "help": family.documentation,
        "samples": [[sample.name, sample.labels, sample.value] for sample in family.samples],
    }
    for family in text_string_to_metric_families(sys.stdin.read())
]
json.dump(families, sys.stdout)
