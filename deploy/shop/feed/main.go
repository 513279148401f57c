// Command feed turns a shop's list of kits into feeds for carriers and for pages:
// what a packed kit measures and weighs, how much of it is empty, and what it
// costs to make. It computes no size: one request asks the service for all
// packed sizes, another for all cut plans.
//
//	go run ./deploy/shop/feed < deploy/shop/kits.csv > feed.csv
//	go run ./deploy/shop/feed -as jsonld < deploy/shop/kits.csv > feed.json
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	var f feed
	flag.StringVar(&f.service, "service", "http://127.0.0.1:8080", "address of the service")
	flag.StringVar(&f.sheet, "sheet", "a3", "sheet that the kits are cut from")
	flag.Float64Var(&f.sheetPrice, "price", 0.45, "price of a sheet")
	flag.IntVar(&f.batch, "batch", 50, "kits that are cut together")
	flag.Float64Var(&f.hour, "hour", 24, "price of an hour of work")
	flag.Float64Var(&f.glue, "glue", 0.03, "price of the glue of a kit")
	as := flag.String("as", "csv", "csv, or jsonld for schema.org products")
	flag.Parse()
	kits, err := f.read(os.Stdin)
	if err == nil && *as == "jsonld" {
		err = writeProducts(os.Stdout, kits)
	} else if err == nil {
		err = writeTable(os.Stdout, kits)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "feed:", err)
		os.Exit(1)
	}
}
