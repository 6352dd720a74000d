using Toepan.Domain.Ratings;
using Toepan.Domain.Sheets;
using Xunit;

namespace Toepan.Domain.Tests.Sheets;

/// <summary>The frozen document: written and read without loss, hashed over what is signed and nothing else; its languages are complete.</summary>
public sealed class SheetDocumentTests
{
    private static SheetDocument Document(double footwellMm = 244.4) =>
        SheetComposer.Compose(SheetCases.Facts() with { Measures = [SheetCases.Vehicle("structure.footwell.rearward", footwellMm)], Ranges = [new("head", 0.002, 0.04)] });

    [Fact]
    public void Json_WrittenReadAndWrittenAgain_IsTheSameBytes() =>
        Assert.Equal(SheetDocumentJson.Write(Document()), SheetDocumentJson.Write(SheetDocumentJson.Read(SheetDocumentJson.Write(Document()))));

    [Fact]
    public void Hash_MeasureBehindABindingChanged_IsAnother()
    {
        Assert.Equal(SheetDocumentJson.Hash(Document()), SheetDocumentJson.Hash(Document()));
        Assert.NotEqual(SheetDocumentJson.Hash(Document()), SheetDocumentJson.Hash(Document(244.5)));
        Assert.Contains(SheetDifference.Between(Document(), Document(254.5)), difference => difference.What == "structure.footwell.rearward");
    }

    [Fact]
    public void Hash_ReleaseFillsItsMembers_StaysTheSame()
    {
        var released = Document() with
        {
            Version = new(2, new DateTimeOffset(2031, 5, 1, 9, 0, 0, TimeSpan.Zero), null, "A figure was corrected."), Answer = new("Tarnbrook", new DateOnly(2031, 4, 2), "We agree."),
            Banner = new("level", ProtectionLevel.Low, ProtectionLevel.Moderate, new DateOnly(2031, 5, 1), "Corrected.", new DateOnly(2032, 5, 1)),
        };

        Assert.Equal(SheetDocumentJson.Hash(Document()), SheetDocumentJson.Hash(released));
    }

    [Fact]
    public void Languages_AllKeysAndBindings_AreTheSame()
    {
        foreach (var texts in SheetTexts.All)
        {
            Assert.Equal(SheetTexts.English.Keys.Order(StringComparer.Ordinal), texts.Keys.Order(StringComparer.Ordinal));
            Assert.All(texts.Keys, key => Assert.Equal(
                SheetTemplate.Names(SheetTexts.English[key]).Order(StringComparer.Ordinal), SheetTemplate.Names(texts[key]).Order(StringComparer.Ordinal)));
            Assert.All(texts.Keys, key => Assert.DoesNotContain(SheetTemplate.Parse(texts[key], out _), part => !part.Binds && part.Text.Any(char.IsNumber)));
        }
    }

    [Fact]
    public void Compose_EveryDigit_StandsInASpanOfAKnownFigure()
    {
        var document = Document();
        foreach (var sentence in document.Texts.SelectMany(text => text.All()))
        {
            var bound = sentence.Spans.SelectMany(span => Enumerable.Range(span.Start, span.Length)).ToHashSet();
            Assert.All(Enumerable.Range(0, sentence.Text.Length).Where(i => char.IsNumber(sentence.Text[i])), i => Assert.Contains(i, bound));
            Assert.All(sentence.Spans, span => Assert.NotNull(document.Figure(span.Figure)));
        }
    }

    // A language written from right to left, made here: every text in brackets, so that one that did not come from the resource shows.
    [Fact]
    public void Compose_RightToLeftLanguage_LeavesNothingUntranslated()
    {
        string[] kept = ["units.both", "after.colon", "number.decimal"];
        var mirrored = new SheetTexts("ar-XB", SheetTexts.English.Keys.ToDictionary(
            key => key, key => key == "direction" ? "rtl" : kept.Contains(key) ? SheetTexts.English[key] : $"⟦{SheetTexts.English[key]}⟧"));

        var text = SheetComposer.Compose(SheetCases.Facts(), [mirrored]).Texts[0];

        Assert.Equal("rtl", text.Direction);
        Assert.All(text.All(), sentence => Assert.Contains('⟦', sentence.Text));
        Assert.All(text.Labels, label => Assert.StartsWith("⟦", label.Text, StringComparison.Ordinal));
        Assert.All(text.Regions, region => Assert.StartsWith("⟦", region.Title, StringComparison.Ordinal));
    }

    [Fact]
    public void Peers_OutsideTheMassRatio_AreLeftOut()
    {
        // 1690 × 1.10 = 1859; 1690 / 1.10 = 1536.4.
        SheetPeer Peer(string key, double mass) => new(key, key, ProtectionLevel.High, mass);

        var peers = SheetPeersComposer.Compose(Document(), [Peer("a", 1859), Peer("b", 1860), Peer("c", 1537), Peer("d", 1536), Peer("tarnbrook-voyle", 1690)])!;

        Assert.Equal(["a", "c"], peers.Others.Select(peer => peer.Key));
        Assert.Equal("High protection: 2 and Low protection: 1 (this vehicle).", peers.In("en").Alternative.Text);
        Assert.StartsWith("2 other tested vehicles", peers.In("en").Sentences[0].Text, StringComparison.Ordinal);
    }
}
