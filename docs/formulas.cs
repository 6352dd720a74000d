#!/usr/bin/env dotnet
// Writes docs/formulas.md from the doc comments of src/Domain: dotnet run docs/formulas.cs
#:project ../src/Domain/Domain.csproj
#:property PublishAot=false

using System.Runtime.CompilerServices;
using Toepan.Domain.Measures;

var documentation = Path.ChangeExtension(typeof(MeasureCatalogue).Assembly.Location, ".xml");
using var stream = File.OpenRead(documentation);
var page = MeasureCatalogueWriter.Write(stream, MeasureCatalogueLimits.OfDefaultScheme());
var target = Path.Combine(Here(), "formulas.md");
File.WriteAllText(target, page);
Console.WriteLine($"{target}: {MeasureCatalogue.Entries.Count} measures");

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
