using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.EntityFrameworkCore;
using Toepan.Api.Store.Tables;

namespace Toepan.Api.Store;

/// <summary>Keeps the data protection keys in the store: one backup, and every node reads the same cookies.</summary>
public sealed class KeyStore(IDbContextFactory<ProgrammeDb> contexts) : IXmlRepository
{
    public IReadOnlyCollection<XElement> GetAllElements()
    {
        using var db = contexts.CreateDbContext();
        return [.. db.Set<DataProtectionKeyRow>().AsNoTracking().OrderBy(row => row.Id).Select(row => row.Xml).AsEnumerable().Select(XElement.Parse)];
    }

    public void StoreElement(XElement element, string friendlyName)
    {
        using var db = contexts.CreateDbContext();
        db.Add(new DataProtectionKeyRow { Name = friendlyName, Xml = element.ToString(SaveOptions.DisableFormatting) });
        db.SaveChanges();
    }
}
