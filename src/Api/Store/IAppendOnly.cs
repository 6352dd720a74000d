namespace Toepan.Api.Store;

/// <summary>
/// A table whose rows are never changed or removed: the service's login is granted SELECT and INSERT on it and nothing else.
/// Every entity of the <c>lab</c> schema without this mark may be updated and deleted.
/// </summary>
public interface IAppendOnly;
