### Which loops an opening needs.
